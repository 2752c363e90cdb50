import { chiSquaredQuantile, chiSquaredUpperQuantile } from '../distribution/index.ts';
import { type IntervalSide, limits } from './mean-interval.ts';
import { plainPercent, plainPieces } from './plain-number.ts';
import { type FewValues, fewnessDoubts, requireShare, sampleOf } from './sample.ts';

export interface DeviationInterval {
  readonly n: number;
  readonly sd: number | null;
  readonly confidence: number;
  readonly side: IntervalSide;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method = 'Chi-squared interval of a normal standard deviation (ISO 2854)';

/**
 * The interval of the true standard deviation of a product from a few of its pieces, by chi-squared with n - 1 degrees of freedom.
 * With one value, equal values or none both limits are null and a doubt says why.
 */
export function deviationInterval(
  few: FewValues,
  options: { readonly confidence: number; readonly side?: IntervalSide; readonly unit?: string },
): DeviationInterval {
  const { confidence, side = 'both', unit } = options;
  requireShare('the confidence', confidence);
  const { n, sd, obstacle } = sampleOf(few);
  const common = { n, sd, confidence, side, method };
  if (obstacle !== null || sd === null) {
    const sentence = `No interval of the scatter can be told. ${obstacle ?? ''}`.trim();
    return { ...common, lower: null, upper: null, doubts: [obstacle ?? ''], sentence };
  }
  const tail = side === 'both' ? (1 - confidence) / 2 : 1 - confidence;
  const nu = n - 1;
  const lower = side === 'upper' ? null : sd * Math.sqrt(nu / chiSquaredUpperQuantile(tail, nu));
  const upper = side === 'lower' ? null : sd * Math.sqrt(nu / chiSquaredQuantile(tail, nu));
  const sentence = `With ${plainPercent(confidence)} confidence the true standard deviation ${limits(lower, upper, unit)}, judged by ${plainPieces(n)}.`;
  return { ...common, lower, upper, doubts: fewnessDoubts(n), sentence };
}
