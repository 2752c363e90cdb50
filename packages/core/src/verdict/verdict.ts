import type { Limit } from '../chain/specification.ts';

export type Verdict = 'conforms' | 'does not conform' | 'inconclusive' | 'not judged';

/** How a measured value meets its limit. Agreed before the first pull (ISO/IEC 17025:2017 7.1.3). */
export type DecisionRule = 'simple acceptance' | 'guarded acceptance';

/** A value as it comes to judgement. */
export interface MeasuredValue {
  readonly value: number;
  readonly unit: string;
  /** Expanded uncertainty U = k u; null when none is known, which leaves a guarded rule unable to judge. */
  readonly expandedUncertainty: number | null;
  readonly coverageFactor: number;
  /** The true value is not below `value` (clipped, stopped or gripped pull). */
  readonly isAtLeast: boolean;
  /** How the value came about: inputs, method, source. */
  readonly origin: string;
  readonly contributions: readonly Contribution[];
}

/** One line of an uncertainty budget. */
export interface Contribution {
  readonly name: string;
  readonly standardUncertainty: number;
  readonly source: string;
}

/** One requirement met by one value. */
export interface Judgement {
  readonly limit: Limit;
  readonly measured: MeasuredValue | null;
  readonly rule: DecisionRule;
  /** The value must lie inside these for `conforms`; null on an open side. */
  readonly acceptance: { readonly lower: number | null; readonly upper: number | null };
  /** Probability that the true value lies inside the limits (JCGM 106:2012 7); null without an uncertainty, or for "at least". */
  readonly probability: number | null;
  readonly verdict: Verdict;
  readonly reason: string;
}
