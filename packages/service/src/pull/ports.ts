import type { WatchSample } from '@provinghouse/core';

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
  readonly samples: number;
  /** Pieces of bytes that gave no reading. */
  readonly rejected: number;
  /** Gaps, losses, troubles, in plain words. */
  readonly notes: readonly string[];
}

/** Where a recording is kept. */
export interface Keeper {
  mark(words: string): void;
  /** Everything on disc, then made into a trace. */
  seal(why: string, marks: readonly TimedMark[]): Promise<SealedRecording>;
  /** Stops keeping; what is on disc stays there, to be recovered. */
  abandon(): Promise<void>;
}

export interface TimedMark {
  readonly time_s: number;
  readonly words: string;
}

export interface KeeperNews {
  /** Written, in time order. */
  kept(samples: readonly WatchSample[]): void;
  /** Something the operator should know now. */
  trouble(words: string): void;
}

export type OpenKeeper = (news: KeeperNews) => Promise<Keeper>;
