import { binomialCdf, binomialUpper } from '../distribution/index.ts';
import { requireCount, requireShare } from './sample.ts';

/** Share of the product to lie beyond the bound, and share of samples whose bound is right. */
export interface RankDemand {
  readonly coverage: number;
  readonly confidence: number;
}

/** Confidence with which the r-th least of n values has at least the share `coverage` of the product above it; 1 for r = 0, which bounds nothing. */
export function rankConfidence(n: number, rank: number, coverage: number): number {
  requireCount(n);
  requireCount(rank);
  requireShare('the coverage', coverage);
  return rank === 0 ? 1 : binomialUpper(rank - 1, n, 1 - coverage);
}

/** The greatest rank whose value is still a bound with the confidence asked for; 0 where not even the least value is one. */
export function nonparametricRank(n: number, { coverage, confidence }: RankDemand): number {
  requireShare('the confidence', confidence);
  let low = 0;
  let high = n + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (rankConfidence(n, middle, coverage) >= confidence) low = middle;
    else high = middle;
  }
  return low;
}

/** The least number of pieces of which the r-th least value is a bound; r is a whole number of 1 or more. */
export function nonparametricSampleSize(rank: number, { coverage, confidence }: RankDemand): number {
  requireShare('the coverage', coverage);
  requireShare('the confidence', confidence);
  if (!Number.isInteger(rank) || rank < 1) throw new RangeError(`a rank is a whole number of 1 or more, not ${rank}`);
  const enough = (n: number) => binomialCdf(rank - 1, n, 1 - coverage) <= 1 - confidence;
  let low = 0;
  let high = rank;
  while (!enough(high)) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}
