import type { Effects } from '../effects.ts';
import { inThread } from '../in-thread.ts';
import type { PullToSeal, SealedPull } from './seal-pull.ts';

/** What the thread is handed: the pull, and the effects as plain data. */
export interface SealJob {
  readonly pull: PullToSeal;
  /** Folder of the record. */
  readonly home: string;
  readonly who: string;
  readonly now: string;
}

export interface SealInThreadOptions {
  readonly home: string;
  readonly signal: AbortSignal;
  /** Told how far it is, 0 to 1. */
  readonly progress: (share: number) => void;
}

/** Told no oftener, so that screens are not kept busy. */
const step = 0.01;

/**
 * Seals a pull as `sealPull` does, in a thread with a connection to the record of its own: a long one takes its time, and the rig beside it must
 * not lose a reading to that. Ended by the signal it leaves record and recording as they were.
 */
export function sealPullInThread(
  pull: PullToSeal,
  { home, signal, progress }: SealInThreadOptions,
  { now, who }: Pick<Effects, 'now' | 'who'>,
): Promise<SealedPull> {
  const job: SealJob = { pull, home, who, now: now().toISOString() };
  let told = 0;
  return inThread<SealedPull>(new URL('./seal-thread.ts', import.meta.url), job, {
    signal,
    progress: (_, done, total) => {
      const share = done / total;
      if (share < told + step) return;
      told = share;
      progress(share);
    },
  });
}
