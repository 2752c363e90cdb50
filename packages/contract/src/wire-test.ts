/** What made a channel doubtful while it was heard. */
export type DoubtKind = 'stuck' | 'below zero' | 'sign turned' | 'unit switched';

/** What one channel did while the wires were tested. Values in the bench unit. */
export interface ChannelReport {
  readonly channel: string;
  readonly signal: 'force' | 'table' | 'extension' | null;
  /** Unit on the wire. */
  readonly unit: string;
  readonly benchUnit: 'kN' | 'mm';
  readonly readings: number;
  /** Readings a second, by their arrival; null before the second arrival. */
  readonly rate_Hz: number | null;
  /** Standard deviation of the time between arrivals; null before the third. */
  readonly arrivalSpread_ms: number | null;
  /** Standard deviation of the time between readings on the time they carry; null before the third. */
  readonly jitter_ms: number | null;
  readonly longestWait_ms: number | null;
  readonly sinceLast_s: number | null;
  readonly last: number | null;
  readonly least: number | null;
  readonly greatest: number | null;
  readonly outOfRange: number;
  /** Each said once an occasion. */
  readonly doubts: readonly { readonly kind: DoubtKind; readonly at_s: number; readonly words: string }[];
}

/** A line, a message or an answer as it came, everything but plain ASCII as \xNN; registers as hexadecimal bytes. */
export interface RawLine {
  readonly at_s: number;
  /** Topic or registers it came from; null on a line. */
  readonly place: string | null;
  readonly text: string;
}

/** What one source did while the wires were tested. */
export interface WireReport {
  readonly describe: string;
  /** How its lines are read; null where no pattern is. */
  readonly pattern: string | null;
  /** Whether the connection stands; null where there is none to stand. */
  readonly isOpen: boolean | null;
  readonly isPractice: boolean;
  readonly seconds: number;
  readonly bytes: number;
  readonly lines: readonly RawLine[];
  readonly channels: readonly ChannelReport[];
  readonly rejected: number;
  readonly rejectedBytes: number;
  /** Share of the rejected pieces that are no plain text. */
  readonly garbledShare: number;
  readonly reasons: readonly { readonly why: string; readonly count: number; readonly example: string }[];
  readonly troubles: readonly string[];
  /** Seconds on the source's own clock for each of ours; null where it has none, or none that must keep pace. */
  readonly clockRatio: number | null;
}

/** What is wrong on the wires, or may be. Those without a source concern all of them. */
export type WireFinding =
  | { readonly kind: 'no force' }
  | { readonly kind: 'two of a kind'; readonly signal: string; readonly channels: readonly string[] }
  | { readonly kind: 'away'; readonly source: string; readonly words: string | null }
  | { readonly kind: 'silent'; readonly source: string; readonly seconds: number }
  | { readonly kind: 'fell silent'; readonly source: string; readonly seconds: number }
  | { readonly kind: 'garbled'; readonly source: string; readonly example: string }
  | { readonly kind: 'none read'; readonly source: string; readonly pattern: string | null; readonly example: string }
  | { readonly kind: 'channel missing'; readonly source: string; readonly channel: string }
  | {
      readonly kind: 'some unread';
      readonly source: string;
      readonly share: number;
      readonly why: string;
      readonly example: string;
    }
  | { readonly kind: 'doubt'; readonly channel: string; readonly doubt: DoubtKind; readonly words: string }
  | { readonly kind: 'still'; readonly channel: string; readonly value: number; readonly unit: string }
  | { readonly kind: 'out of range'; readonly channel: string; readonly count: number }
  | { readonly kind: 'clock'; readonly source: string; readonly ratio: number };

/** What a test of the wires tells who looks on. */
export type WireTestMessage =
  | {
      readonly kind: 'report';
      readonly seconds: number;
      /** Seconds until the test ends by itself. */
      readonly left_s: number;
      readonly reports: readonly WireReport[];
      /** The gravest first. */
      readonly findings: readonly WireFinding[];
    }
  /** The wires cannot be tested now. */
  | { readonly kind: 'refused'; readonly code: string; readonly words: string }
  /** By the limit of time, by a pull that is being armed, or because the server closes. */
  | { readonly kind: 'over'; readonly why: 'limit' | 'pull' | 'closed' };
