import type { TraceSignals } from './signals.ts';

export type Signal = 'time' | 'force' | 'table' | 'extension';

/** Facts of the rig that pulled. Each may be left out; what is not known is not assumed. */
export interface RigFacts {
  /** ISO 7500-1 class: largest error of indication in % of the force. */
  readonly classPct?: number;
  readonly resolution_kN?: number;
  readonly rangeMaximum_kN?: number;
  /** Stretch of frame and grips per unit force; taken off the table travel when there is no extension column. */
  readonly compliance_mm_per_kN?: number;
}

/** The window a method sets for the rate of testing: [lowest, highest]. */
export interface RateLimits {
  readonly tableSpeed_mm_per_min?: readonly [number, number];
  readonly forceRate_kN_per_s?: readonly [number, number];
}

/** How a trace is to be parsed. */
export interface ParseOptions {
  /** A column by name, by `name[unit]`, or by 1-based number; `none` says that there is no such column. */
  readonly columns?: { readonly [signal in Signal]?: string };
  /** Units where the file does not say them. */
  readonly units?: { readonly [signal in Signal]?: string };
  readonly decimal?: '.' | ',';
}

/** How signals are to be read. Areas are the original area in mm2; a gauge length or links x pitch gives strains a length. */
export interface ReadOptions {
  readonly area_mm2?: number;
  readonly gaugeLength_mm?: number;
  readonly links?: number;
  /** Inside length of one link. */
  readonly pitch_mm?: number;
  /** Offset of the knee in % of the gauge length; 0.2 unless said. */
  readonly offset_pct?: number;
  /** When given, a fall of this share from the maximum makes the maximum final although the record stops before parting. */
  readonly agreedDrop_pct?: number;
  readonly rig?: RigFacts;
  readonly rateLimits?: RateLimits;
}

export interface TraceOptions extends ParseOptions, ReadOptions {}

export type { TraceSignals };
