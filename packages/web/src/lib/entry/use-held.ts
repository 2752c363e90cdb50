import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Fault } from '../request.ts';
import { onChange } from './change-news.ts';

/** A list that a book holds: its rows of one table, or its own specifications. */
export type HeldState<E> =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | {
      readonly state: 'read';
      readonly rows: readonly E[];
      readonly again: () => void;
      /** When they were asked for, on the clock of this window (`performance.now`): all that was kept before stands in them. */
      readonly asOf: number;
    };

export type HeldResult<E> = { readonly rows: readonly E[] } | { readonly fault: Fault };

/** Entries that are kept one right after the other are read together. */
const rest_ms = 250;

type Seen<E> = { readonly of: string; readonly asOf: number; readonly result: HeldResult<E> } | null;

/** Lists as last read, by book and name: a screen that is opened again shows them while they are read anew. */
const lastRead = new Map<string, Seen<unknown>>();

/**
 * A list of a book under its name, read again whenever something of the book was kept, here or in another window.
 *
 * @param ask reads it once; the same function until the book or the name changes
 */
export function useHeld<E>(book: string, name: string, ask: () => Promise<HeldResult<E>>): HeldState<E> {
  const of = `${book}\n${name}`;
  const [seen, setSeen] = useState<Seen<E>>(null);
  const now = useCallback(async () => {
    const asOf = performance.now();
    const result = await ask();
    // While the server does not answer, what was read last stays on the screen: whoever is typing goes on typing.
    if ('fault' in result && result.fault.code === 'no-answer' && lastRead.has(of)) return;
    if ('rows' in result) lastRead.set(of, { of, asOf, result });
    setSeen({ of, asOf, result });
  }, [ask, of]);
  const read = useMemo(() => restingBetween(now), [now]);
  useEffect(() => {
    read();
    const onFront = () => {
      if (document.visibilityState === 'visible') read();
    };
    const off = onChange((changed) => {
      if (changed === book) read();
    });
    document.addEventListener('visibilitychange', onFront);
    return () => {
      off();
      document.removeEventListener('visibilitychange', onFront);
    };
  }, [read, book]);
  // Under the name of its book and list stand entries of that list only.
  const shown = seen?.of === of ? seen : ((lastRead.get(of) ?? null) as Seen<E>);
  if (shown === null) return { state: 'reading' };
  if ('fault' in shown.result) return { state: 'at fault', fault: shown.result.fault, again: read };
  return { state: 'read', rows: shown.result.rows, again: read, asOf: shown.asOf };
}

/** Reads at once, then rests a little before the next time; never two at a time, and always once more after the last call. */
function restingBetween(read: () => Promise<void>): () => void {
  let isBusy = false;
  let isWanted = false;
  const go = async () => {
    isBusy = true;
    isWanted = false;
    await read();
    setTimeout(() => {
      isBusy = false;
      if (isWanted) void go();
    }, rest_ms);
  };
  return () => {
    isWanted = true;
    if (!isBusy) void go();
  };
}
