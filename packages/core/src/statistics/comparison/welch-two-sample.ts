import { studentQuantile, studentUpper } from '../distribution/index.ts';
import { centred, type Group, refuseConfidence } from './group.ts';
import { pairReason, pairSentence } from './pair-difference.ts';

export interface TwoSampleComparison {
  readonly method: string;
  readonly first: string;
  readonly second: string;
  /** Mean of the first less mean of the second; null when either has no value. */
  readonly difference: number | null;
  readonly standardError: number | null;
  readonly degreesOfFreedom: number | null;
  readonly t: number | null;
  /** Two-sided. */
  readonly p: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly confidence: number;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * Welch's comparison of two means with unequal variances (Welch 1947, Biometrika 34, 28-35).
 * With one value in a group, or no scatter in either, the difference is told and the rest is null.
 */
export function welchTwoSample(
  pair: { readonly first: Group; readonly second: Group },
  options: { readonly confidence?: number; readonly unit?: string } = {},
): TwoSampleComparison {
  const confidence = options.confidence ?? 0.95;
  refuseConfidence(confidence);
  const { groups } = centred([pair.first, pair.second]);
  const [a, b] = groups;
  const names = { first: pair.first.name, second: pair.second.name };
  const method = 'Two means compared, variances unequal (Welch 1947)';
  if (!a || !b) return without({ method, ...names, confidence, difference: null, reason: 'a group has no value' });
  const difference = a.offset - b.offset;
  const reason = pairReason(a, b);
  if (reason !== null || a.variance === null || b.variance === null) {
    return without({ method, ...names, confidence, difference, reason: reason ?? '' });
  }
  const { standardError, degreesOfFreedom } = unequalError([
    { variance: a.variance, n: a.n },
    { variance: b.variance, n: b.n },
  ]);
  const t = difference / standardError;
  const p = Math.min(1, 2 * studentUpper(Math.abs(t), degreesOfFreedom));
  const half = studentQuantile(0.5 + confidence / 2, degreesOfFreedom) * standardError;
  const limits = { lower: difference - half, upper: difference + half };
  return {
    method,
    ...names,
    difference,
    standardError,
    degreesOfFreedom,
    t,
    p,
    ...limits,
    confidence,
    doubts: fewDoubts([a, b]),
    sentence: pairSentence({ ...names, difference, ...limits, confidence, unit: options.unit ?? '', joint: false }),
  };
}

/** Standard error of a difference of means and its degrees of freedom by Welch and Satterthwaite. */
export function unequalError(
  sides: readonly [
    { readonly variance: number; readonly n: number },
    { readonly variance: number; readonly n: number },
  ],
): { readonly standardError: number; readonly degreesOfFreedom: number } {
  const parts = sides.map(({ variance, n }) => ({ part: variance / n, n }));
  const whole = parts.reduce((sum, { part }) => sum + part, 0);
  // Shares, not squares of squares: variances of 1e-170 would vanish when squared.
  const unevenness = parts.reduce((sum, { part, n }) => sum + (part / whole) ** 2 / (n - 1), 0);
  return { standardError: Math.sqrt(whole), degreesOfFreedom: 1 / unevenness };
}

function fewDoubts(sides: readonly { readonly name: string; readonly n: number }[]): string[] {
  return sides
    .filter((side) => side.n < 4)
    .map((side) => `${side.name} has ${side.n} values: its scatter is hardly known, so the interval is wide`);
}

function without(have: {
  readonly method: string;
  readonly first: string;
  readonly second: string;
  readonly confidence: number;
  readonly difference: number | null;
  readonly reason: string;
}): TwoSampleComparison {
  const { reason, ...rest } = have;
  const blank = { standardError: null, degreesOfFreedom: null, t: null, p: null, lower: null, upper: null };
  const sentence = `${have.first} and ${have.second} cannot be told apart or alike: ${reason}.`;
  return { ...rest, ...blank, doubts: [reason], sentence };
}
