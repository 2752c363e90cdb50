import { nonparametricRank, nonparametricSampleSize, rankConfidence } from './nonparametric-rank.ts';
import { plainNumber, plainPercent, plainPieces } from './plain-number.ts';
import { requireShare } from './sample.ts';

export interface NonparametricBound {
  readonly n: number;
  readonly coverage: number;
  readonly confidence: number;
  readonly side: 'lower' | 'upper';
  /** Which value from the end is the bound: 1 for the outermost; null where too few values bear a bound. */
  readonly rank: number | null;
  readonly bound: number | null;
  /** The confidence truly reached by that value; that of the outermost where none bears the bound. */
  readonly reachedConfidence: number;
  /** What the outermost value does say: the share of the product beyond it, at the confidence asked for. */
  readonly outermost: number | null;
  readonly coverageOfOutermost: number | null;
  /** Pieces needed for the outermost value to be the bound. */
  readonly piecesNeeded: number;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method = 'Nonparametric tolerance bound by order statistics (ISO 16269-6; MIL-HDBK-17-1F, Vol. 1, 8.3.4.5.1)';

/**
 * A bound that needs no form of the spread: one of the values themselves. It takes many pieces
 * (29 for 90 % at 95 % confidence); below, the bound is null and the result tells what the outermost value does promise.
 */
export function nonparametricBound(
  values: readonly number[],
  options: {
    readonly coverage: number;
    readonly confidence: number;
    readonly side: 'lower' | 'upper';
    readonly unit?: string;
  },
): NonparametricBound {
  const { coverage, confidence, side, unit } = options;
  requireShare('the coverage', coverage);
  requireShare('the confidence', confidence);
  if (values.some((value) => !Number.isFinite(value)))
    throw new RangeError('a nonparametric bound takes finite numbers only');
  const n = values.length;
  const sorted = values.toSorted((a, b) => (side === 'lower' ? a - b : b - a));
  const rank = nonparametricRank(n, { coverage, confidence });
  const outermost = sorted[0] ?? null;
  const coverageOfOutermost = n === 0 ? null : (1 - confidence) ** (1 / n);
  const piecesNeeded = nonparametricSampleSize(1, { coverage, confidence });
  const common = { n, coverage, confidence, side, outermost, coverageOfOutermost, piecesNeeded, method };
  if (outermost === null || coverageOfOutermost === null) {
    const reason = 'There is no value.';
    return {
      ...common,
      rank: null,
      bound: null,
      reachedConfidence: 0,
      doubts: [reason],
      sentence: `No bound can be told. ${reason}`,
    };
  }
  const share = rank === 0 ? coverageOfOutermost : coverage;
  const bound = rank === 0 ? null : (sorted[rank - 1] ?? null);
  const sentence = sentenceOf({ confidence, share, value: bound ?? outermost, side, n, unit });
  const doubts =
    rank === 0 ? [`A bound for ${plainPercent(coverage)} of the pieces takes ${piecesNeeded} of them.`] : [];
  const reachedConfidence = rankConfidence(n, Math.max(1, rank), coverage);
  return { ...common, rank: rank === 0 ? null : rank, bound, reachedConfidence, doubts, sentence };
}

function sentenceOf(told: {
  readonly confidence: number;
  readonly share: number;
  readonly value: number;
  readonly side: 'lower' | 'upper';
  readonly n: number;
  readonly unit: string | undefined;
}): string {
  const verb = told.side === 'lower' ? 'reach' : 'stay at';
  const end = told.side === 'lower' ? 'or more' : 'or less';
  const share = `at least ${plainPercent(told.share)} of all such pieces ${verb} ${plainNumber(told.value, told.unit)} ${end}`;
  return `With ${plainPercent(told.confidence)} confidence ${share}, whatever the form of their spread, judged by ${plainPieces(told.n)}.`;
}
