import type { Contribution } from '../verdict/verdict.ts';

/**
 * Combined standard uncertainty of uncorrelated contributions already in the unit of the result: the root of the sum of squares
 * (JCGM 100:2008 5.1.2). An empty list has none: null.
 */
export function combine(contributions: readonly Contribution[]): number | null {
  if (contributions.length === 0) return null;
  return Math.hypot(...contributions.map((contribution) => contribution.standardUncertainty));
}

/** Standard uncertainty of a value known to lie within +/- `halfWidth`, every place in it as likely (JCGM 100:2008 4.3.7). */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}
