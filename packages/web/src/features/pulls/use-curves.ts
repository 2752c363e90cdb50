import type { PullCurve } from '@provinghouse/contract';
import { useEffect, useState } from 'react';
import { bookAddress } from '../../lib/entry/book.ts';
import { readRecord } from '../../lib/request.ts';

export interface Curves {
  readonly curves: ReadonlyMap<string, PullCurve>;
  /** Pulls whose curve could not be read. */
  readonly missing: readonly string[];
  readonly isReading: boolean;
}

/** The curves of some pulls, thinned for drawing. One that was read once is not asked for again: a recording never changes. */
export function useCurves(code: string, pulls: readonly string[]): Curves {
  const [seen, setSeen] = useState<ReadonlyMap<string, PullCurve | null>>(new Map());
  const wanted = pulls.filter((pull) => !seen.has(pull)).join('\n');
  useEffect(() => {
    if (wanted === '') return;
    let isGone = false;
    void Promise.all(
      wanted.split('\n').map(async (pull) => {
        const reply = await readRecord<PullCurve>(`${bookAddress(code)}/pulls/${encodeURIComponent(pull)}/curve`);
        return [pull, reply.ok ? reply.record : null] as const;
      }),
    ).then((read) => {
      if (!isGone) setSeen((now) => new Map([...now, ...read]));
    });
    return () => {
      isGone = true;
    };
  }, [code, wanted]);
  const curves = new Map(pulls.flatMap((pull) => curveOf(seen, pull)));
  return { curves, missing: pulls.filter((pull) => seen.get(pull) === null), isReading: wanted !== '' };
}

function curveOf(seen: ReadonlyMap<string, PullCurve | null>, pull: string): (readonly [string, PullCurve])[] {
  const curve = seen.get(pull) ?? null;
  return curve === null ? [] : [[pull, curve]];
}
