import type { Channel } from '../channel/channel.ts';
import type { RawReading, SourceClock } from '../source/source.ts';

/** A source as the record knows it. */
export interface SpoolSource {
  readonly describe: string;
  readonly clock: SourceClock;
  readonly channels: readonly Channel[];
}

/** What a record is of. */
export interface SpoolHeader {
  readonly pull: string;
  readonly piece: string;
  readonly rig: string;
  /** Simulated: marked so wherever the record goes. */
  readonly isPractice: boolean;
  /** Date and time by the wall clock, ISO 8601. */
  readonly startedAt: string;
  readonly sources: readonly SpoolSource[];
}

/** One thing a record holds. Times of readings count from the start of the record, except on a source's own clock. */
export type SpoolContent =
  | { readonly kind: 'header'; readonly header: SpoolHeader }
  | { readonly kind: 'readings'; readonly source: number; readonly readings: readonly RawReading[] }
  | { readonly kind: 'rejected'; readonly source: number; readonly bytes: Uint8Array; readonly why: string }
  | { readonly kind: 'mark'; readonly words: string }
  | { readonly kind: 'trouble'; readonly words: string }
  /** Readings that came but could not be kept. */
  | { readonly kind: 'lost'; readonly readings: number; readonly why: string }
  /** A source said of itself that it is simulated. */
  | { readonly kind: 'practice'; readonly source: number }
  /** The record was taken up again after it broke off. */
  | { readonly kind: 'resumed'; readonly at: string; readonly tornBytes: number }
  | { readonly kind: 'closed'; readonly why: string };

export type SpoolEntry = SpoolContent & { readonly time_s: number };
