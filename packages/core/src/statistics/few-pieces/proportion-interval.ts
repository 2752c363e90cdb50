import { betaQuantile } from '../distribution/index.ts';
import type { IntervalSide } from './mean-interval.ts';
import { plainPercent } from './plain-number.ts';
import { requireCount, requireShare } from './sample.ts';

export interface ProportionInterval {
  readonly count: number;
  readonly n: number;
  readonly proportion: number | null;
  readonly confidence: number;
  readonly side: IntervalSide;
  /** 0 and 1 where nothing narrower follows. */
  readonly lower: number;
  readonly upper: number;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method = 'Exact binomial interval (Clopper and Pearson, Biometrika 26 (1934) 404-413)';

/**
 * The true share of pieces of a kind (failed, broken at a weld) from `count` among `n`.
 * A one-sided interval leaves the other limit at 0 or 1. With n = 0 it is 0 to 1 and a doubt says so.
 */
export function proportionInterval(
  { count, n }: { readonly count: number; readonly n: number },
  { confidence, side = 'both' }: { readonly confidence: number; readonly side?: IntervalSide },
): ProportionInterval {
  requireCount(n);
  requireCount(count);
  if (count > n) throw new RangeError(`${count} of ${n} is no proportion`);
  requireShare('the confidence', confidence);
  const tail = side === 'both' ? (1 - confidence) / 2 : 1 - confidence;
  const lower = side === 'upper' || count === 0 ? 0 : betaQuantile(tail, count, n - count + 1);
  const upper = side === 'lower' || count === n ? 1 : 1 - betaQuantile(tail, n - count, count + 1);
  const common = { count, n, confidence, side, method };
  if (n === 0) {
    const reason = 'No piece was tried.';
    return {
      ...common,
      proportion: null,
      lower: 0,
      upper: 1,
      doubts: [reason],
      sentence: `Nothing is known of the share. ${reason}`,
    };
  }
  const range = `between ${plainPercent(lower)} and ${plainPercent(upper)}`;
  const sentence = `${count} of ${n}: with ${plainPercent(confidence)} confidence the true share lies ${range}.`;
  return { ...common, proportion: count / n, lower, upper, doubts: [], sentence };
}
