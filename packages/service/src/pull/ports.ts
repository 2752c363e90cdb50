import type { WatchSample } from '@provinghouse/core';
import type { Gap } from '@provinghouse/rig';

/** What is written at the head of a recording and its file. */
export interface RecordingHead {
  readonly pull: string;
  readonly campaign: string;
  readonly piece: string;
  readonly rig: string;
  readonly operator: string | null;
  readonly source: string;
  readonly isPractice: boolean;
  /** ISO 8601. */
  readonly startedAt: string;
}

/** A recording made into the file of a trace, its head above the readings. */
export interface SealedRecording {
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly marks: readonly TimedMark[];
  /** Simulated, by its head or by what came over the wire. */
  readonly isPractice: boolean;
  readonly samples: number;
  /** Pieces of bytes that gave no reading. */
  readonly rejected: number;
  /** Gaps, losses, troubles, in plain words. */
  readonly notes: readonly string[];
}

/** Where a recording is kept. */
export interface Keeper {
  mark(words: string): void;
  /** Stops keeping, with everything on disc. */
  close(why: string): Promise<void>;
  /** What a recording that is gone on with said before it broke off; null for a new one. */
  readonly before: SaidBefore | null;
}

export interface SaidBefore {
  readonly rejected: number;
  readonly marks: readonly TimedMark[];
  readonly troubles: readonly TimedMark[];
  readonly gaps: readonly Gap[];
}

export interface TimedMark {
  readonly time_s: number;
  readonly words: string;
}

export interface KeeperNews {
  /** Written before the recording broke off; all of them come before the first that is kept now. */
  earlier(samples: readonly WatchSample[]): void;
  /** Written, in time order. */
  kept(samples: readonly WatchSample[]): void;
  /** A time without readings is over. */
  gap(gap: Gap): void;
  /** Something the operator should know now. */
  trouble(words: string): void;
}

export type OpenKeeper = (news: KeeperNews) => Promise<Keeper>;
