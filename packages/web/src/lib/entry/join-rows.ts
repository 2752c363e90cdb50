import type { Fault } from '../request.ts';
import type { HeldState } from './use-held.ts';

type States = Readonly<Record<string, HeldState<unknown>>>;

/** Several lists of a book, each under the name it was asked for by. */
type RowsOf<S extends States> = {
  readonly [K in keyof S]: S[K] extends HeldState<infer E> ? readonly E[] : never;
};

export type JoinedRows<S extends States> =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | { readonly state: 'read'; readonly rows: RowsOf<S> };

/** Several lists as one: read when all are, at fault when one is. */
export function joinRows<S extends States>(states: S): JoinedRows<S> {
  const all = Object.entries(states);
  for (const [, one] of all) if (one.state === 'at fault') return one;
  if (all.some(([, one]) => one.state === 'reading')) return { state: 'reading' };
  const rows = Object.fromEntries(all.map(([name, one]) => [name, one.state === 'read' ? one.rows : []]));
  // Each name with its own list, by the line above.
  return { state: 'read', rows: rows as RowsOf<S> };
}
