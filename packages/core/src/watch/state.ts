import type { WatchMemory } from './memory.ts';

/** One aligned sample of a live pull. Time never runs backwards within a pull; a signal that is not there is null. */
export interface WatchSample {
  readonly time_s: number;
  readonly force_kN: number;
  readonly table_mm: number | null;
  readonly extension_mm: number | null;
}

/** Stages of a pull (design: section 3). A dip or a hesitating valve does not end one. */
export type Stage = 'slack' | 'take-up' | 'elastic' | 'plastic' | 'near maximum' | 'past maximum' | 'parted';

/** A force that something depends on, crossed on the way up. */
export interface RuleLine {
  readonly name: string;
  readonly force_kN: number;
}

export interface WatchOptions {
  readonly ruleLines: readonly RuleLine[];
  /** Window of the method for the table speed in the loaded part, mm/min; null when the method sets none. */
  readonly tableSpeedLimits_mm_per_min: readonly [number, number] | null;
  /** Greatest force the rig is verified for, and the fixture's limit where there is one. */
  readonly rangeMaximum_kN: number | null;
  readonly fixtureLimit_kN: number | null;
  /** Steel area of both legs by the nominal size, for stresses; null when not known. */
  readonly area_mm2: number | null;
  /** A fall of this share from the maximum ends the pull although nothing parted, where the method agrees one; else null. */
  readonly agreedDrop_pct: number | null;
  /** Seconds without a sample after which the source counts as silent. */
  readonly silence_s: number;
}

/** The maximum that is still to come, with the interval that holds it nine times in ten; withheld until it means something. */
export interface Forecast {
  readonly maximum_kN: number;
  readonly lower90_kN: number;
  readonly upper90_kN: number;
  /** Seconds until the maximum at the rate of now; null when that cannot be told. */
  readonly timeToMaximum_s: number | null;
}

export type WatchEnd = 'parted' | 'agreed drop' | 'operator' | 'silence';

/** What a screen shows of a pull at one moment. Everything follows from the samples so far. */
export interface WatchView {
  readonly time_s: number;
  readonly force_kN: number;
  readonly stage: Stage;
  readonly maximumSoFar_kN: number | null;
  readonly timeOfMaximumSoFar_s: number | null;
  /** Final only after parting or an agreed drop; null before. */
  readonly maximumAccepted_kN: number | null;
  readonly rateOfRise_kN_per_s: number | null;
  /** Rate of rise now over that of the elastic stretch at the same table speed. */
  readonly rateOverElastic: number | null;
  readonly tableSpeed_mm_per_min: number | null;
  readonly isSpeedInside: boolean | null;
  readonly shareOutsideSpeed: number | null;
  readonly passed: readonly { readonly name: string; readonly force_kN: number; readonly time_s: number }[];
  readonly next: { readonly name: string; readonly force_kN: number; readonly distance_kN: number } | null;
  readonly rangeGuard: 'clear' | 'near' | 'beyond';
  readonly forecast: Forecast | null;
  readonly dips: number;
  readonly ended: WatchEnd | null;
  readonly doubts: readonly string[];
}

/**
 * A pull being watched. Belongs to `step`, `tick` and `operatorStop`, which change what is inside in place and return the same object; look at it by `viewOf` only.
 * Numbers, words and arrays of fixed length throughout, so `structuredClone` makes an independent copy.
 */
export interface WatchState {
  readonly memory: WatchMemory;
}
