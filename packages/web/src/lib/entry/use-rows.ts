import type { RowHeld, RowsHeld, TableName } from '@provinghouse/contract';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { type Fault, type Reply, readRecord } from '../request.ts';
import { bookAddress } from './book.ts';
import { onChange } from './change-news.ts';

export type RowsState<T extends TableName> =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | {
      readonly state: 'read';
      readonly rows: readonly RowHeld<T>[];
      readonly again: () => void;
      /** When they were asked for, on the clock of this window (`performance.now`): all that was kept before stands in them. */
      readonly asOf: number;
    };

const pageSize = 1000;
/** Entries that are kept one right after the other are read together. */
const rest_ms = 250;

type Seen<T extends TableName> = {
  readonly of: string;
  readonly asOf: number;
  readonly result: { readonly rows: readonly RowHeld<T>[] } | { readonly fault: Fault };
} | null;

/** Rows as last read, by book and table: a screen that is opened again shows them while they are read anew. */
const lastRead = new Map<string, Seen<TableName>>();

/** All rows of one table of a book with their revisions, page by page; read again whenever something of the book was kept, here or in another window. */
export function useRows<T extends TableName>(book: string, kind: T): RowsState<T> {
  const of = `${book}\n${kind}`;
  const [seen, setSeen] = useState<Seen<T>>(null);
  const now = useCallback(async () => {
    const asOf = performance.now();
    const result = await readRows<T>(book, kind);
    // While the server does not answer, what was read last stays on the screen: whoever is typing goes on typing.
    if ('fault' in result && result.fault.code === 'no-answer' && lastRead.has(of)) return;
    if ('rows' in result) lastRead.set(of, { of, asOf, result });
    setSeen({ of, asOf, result });
  }, [book, kind, of]);
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
  // Under the name of its book and table stand rows of that table only.
  const shown = seen?.of === of ? seen : ((lastRead.get(of) ?? null) as Seen<T>);
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

/** All rows of one table of a book, once. */
export async function readRows<T extends TableName>(
  book: string,
  kind: T,
): Promise<{ readonly rows: readonly RowHeld<T>[] } | { readonly fault: Fault }> {
  const rows: RowHeld<T>[] = [];
  for (let after: number | null = -1; after !== null; ) {
    const url: string = `${bookAddress(book)}/records/${kind}?after=${after}&limit=${pageSize}`;
    const reply: Reply<RowsHeld<T>> = await readRecord<RowsHeld<T>>(url);
    if (!reply.ok) return { fault: reply.fault };
    rows.push(...reply.record.rows);
    after = reply.record.next;
  }
  return { rows };
}
