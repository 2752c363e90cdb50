import type { WatchSample, WatchView } from '@provinghouse/core';

/** How a reading came to be trusted or not. */
export type ReadingQuality = 'good' | 'late' | 'out of range' | 'stuck' | 'unreadable';

/** What a live pull tells its viewers, one JSON object a line on the command line and a message each on the wire. */
export type LiveMessage =
  | {
      readonly kind: 'armed';
      readonly pull: string;
      readonly piece: string;
      readonly rig: string;
      readonly isPractice: boolean;
      readonly at: string;
    }
  /** Recording has begun; every reading from here on is kept. */
  | { readonly kind: 'started'; readonly pull: string; readonly at: string }
  /** The pull was given up before it began; nothing was recorded. */
  | { readonly kind: 'disarmed'; readonly pull: string }
  /** Thinned for a screen: never every sample at 10 kHz, always the extremes. */
  | {
      readonly kind: 'samples';
      readonly samples: readonly WatchSample[];
      readonly received: number;
      readonly rejected: number;
    }
  /** `quiet_s`: how long, by the bench's clock, nothing has come. */
  | { readonly kind: 'view'; readonly view: WatchView; readonly quiet_s: number }
  | { readonly kind: 'mark'; readonly time_s: number; readonly words: string }
  | { readonly kind: 'trouble'; readonly time_s: number | null; readonly words: string }
  /** A time without readings that is over: the record broke off, readings were lost, or the rig sent none. */
  | { readonly kind: 'gap'; readonly from_s: number; readonly to_s: number; readonly words: string }
  /** A recording that has ended is being kept: made into a trace, read, written into the record. 1 when that is over, well or not. */
  | { readonly kind: 'keeping'; readonly share: number }
  | {
      readonly kind: 'ended';
      readonly view: WatchView;
      readonly samples: number;
      readonly rejected: number;
      readonly sha256: string | null;
    };
