import type { Database } from '@provinghouse/store';

export type Progress = (label: string, done: number, total: number) => void;

/** What a use case may touch besides its input: the record, the clock, the user's name, a place to show progress. */
export interface Effects {
  readonly store: Database;
  readonly now: () => Date;
  /** Who acts, for the ledger, unless the input names somebody. */
  readonly who: string;
  readonly progress: Progress;
  readonly signal?: AbortSignal;
}
