import { studentQuantile } from '../distribution/index.ts';
import { plainNumber, plainPercent, plainPieces } from './plain-number.ts';
import { type FewValues, fewnessDoubts, requireShare, sampleOf } from './sample.ts';

/** Two-sided, or one-sided with the other limit left open (null). */
export type IntervalSide = 'both' | 'lower' | 'upper';

export interface MeanInterval {
  readonly n: number;
  readonly mean: number | null;
  readonly sd: number | null;
  readonly standardError: number | null;
  readonly confidence: number;
  readonly side: IntervalSide;
  /** The factor of Student's distribution used. */
  readonly factor: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method = "Student's t interval of a normal mean (ISO 2602)";

/**
 * The interval of the true mean of a product from a few of its pieces, by Student's t with n - 1 degrees of freedom.
 * With one value, equal values or none both limits are null and a doubt says why.
 */
export function meanInterval(
  few: FewValues,
  options: { readonly confidence: number; readonly side?: IntervalSide; readonly unit?: string },
): MeanInterval {
  const { confidence, side = 'both', unit } = options;
  requireShare('the confidence', confidence);
  const { n, mean, sd, obstacle } = sampleOf(few);
  const common = { n, mean, sd, confidence, side, method };
  if (obstacle !== null || mean === null || sd === null) {
    const known =
      mean === null ? 'Nothing is known of the mean' : `The mean of ${plainPieces(n)} is ${plainNumber(mean, unit)}`;
    const sentence = `${known}; no interval can be told. ${obstacle ?? ''}`.trim();
    return {
      ...common,
      standardError: null,
      factor: null,
      lower: null,
      upper: null,
      doubts: [obstacle ?? ''],
      sentence,
    };
  }
  const factor = studentQuantile(side === 'both' ? 0.5 + confidence / 2 : confidence, n - 1);
  const standardError = sd / Math.sqrt(n);
  const lower = side === 'upper' ? null : mean - factor * standardError;
  const upper = side === 'lower' ? null : mean + factor * standardError;
  const sentence = `With ${plainPercent(confidence)} confidence the true mean ${limits(lower, upper, unit)}, judged by ${plainPieces(n)}.`;
  return { ...common, standardError, factor, lower, upper, doubts: fewnessDoubts(n), sentence };
}

/** "lies between a and b", "is a or more". */
export function limits(lower: number | null, upper: number | null, unit: string | undefined): string {
  if (lower !== null && upper !== null)
    return `lies between ${plainNumber(lower, unit)} and ${plainNumber(upper, unit)}`;
  if (lower !== null) return `is ${plainNumber(lower, unit)} or more`;
  return `is ${plainNumber(upper ?? 0, unit)} or less`;
}
