import { noncentralTUpper, normalCdf, normalQuantile, studentQuantile } from '../statistics/distribution/index.ts';
import { oneSidedToleranceFactor } from '../statistics/few-pieces/index.ts';
import { leastWhole, percentWords, requireChance, requirePieces } from './search.ts';

/** A requirement to be shown on a product, and what is expected of it. */
export interface ConformityQuestion {
  /** Mean expected, in the unit of the limit. */
  readonly expectedMean: number;
  /** Scatter expected of the pieces, standard deviation over mean in per cent. */
  readonly cov_pct: number;
  readonly limit: number;
  readonly side: 'lower' | 'upper';
  /** Of the statement to be made: 0.95 is common. */
  readonly confidence: number;
  /** The limit is moved inward by this: the part of the measurement uncertainty that all pieces share; 0 unless said otherwise. */
  readonly guard?: number;
  /** What must lie inside the limit: the mean of the product, or a share of all its pieces. */
  readonly of: 'mean' | { readonly share: number };
}

interface Room {
  /** Distance of the expected mean inside the limit, in standard deviations of the pieces. */
  readonly margin: number;
}

/**
 * Chance that `n` pieces show the requirement, by the noncentral t: for the mean, that the one-sided confidence bound clears the
 * limit; for a share, that the one-sided normal tolerance bound does. Null where the expected scatter is 0.
 * @throws RangeError for fewer than 2 pieces or a confidence, share outside 0 to 1
 */
export function powerToShowConformity(n: number, question: ConformityQuestion): number | null {
  requirePieces(n, 2);
  const room = roomOf(question);
  if (room === null) return null;
  const delta = room.margin * Math.sqrt(n);
  return noncentralTUpper(thresholdOf(n, question), n - 1, delta);
}

/** Threshold of the statistic sqrt(n) (mean - limit) / s. */
function thresholdOf(n: number, { of, confidence }: ConformityQuestion): number {
  if (of === 'mean') return studentQuantile(confidence, n - 1);
  return oneSidedToleranceFactor({ n, coverage: of.share, confidence }) * Math.sqrt(n);
}

function roomOf(question: ConformityQuestion): Room | null {
  const { expectedMean, cov_pct, limit, side, guard = 0, of, confidence } = question;
  requireChance({ 'the confidence': confidence, ...(of === 'mean' ? {} : { 'the share': of.share }) });
  if (![expectedMean, limit, guard].every(Number.isFinite))
    throw new RangeError('mean, limit and guard are finite numbers');
  if (!(cov_pct >= 0 && Number.isFinite(cov_pct))) throw new RangeError('a coefficient of variation is not below 0');
  const sd = (cov_pct / 100) * Math.abs(expectedMean);
  const inward = (side === 'lower' ? expectedMean - limit : limit - expectedMean) - guard;
  return sd === 0 ? null : { margin: inward / sd };
}

export interface ConformityPlan {
  /** Null where no number of pieces is enough. */
  readonly pieces: number | null;
  readonly power: number | null;
  readonly question: ConformityQuestion;
  readonly askedPower: number;
  readonly reason: string | null;
  readonly method: string;
  readonly sentence: string;
}

/** Pieces needed to show a requirement with a stated power (the chance that a product as expected does show it). */
export function piecesToShowConformity(question: ConformityQuestion, askedPower = 0.9): ConformityPlan {
  requireChance({ 'the power': askedPower });
  const open = {
    question,
    askedPower,
    method:
      question.of === 'mean'
        ? 'Power of the one-sided t test, noncentral t'
        : 'Power of the one-sided normal tolerance bound, noncentral t (ISO 16269-6 factors)',
  };
  const reason = impossible(question);
  if (reason !== null) return { ...open, pieces: null, power: null, reason, sentence: reason };
  const pieces = leastWhole((n) => (powerToShowConformity(n, question) ?? 1) >= askedPower, 2);
  if (pieces === null) {
    const tooMany =
      'More than 100000 pieces would be needed: the expected mean lies too near the limit for its scatter.';
    return { ...open, pieces, power: null, reason: tooMany, sentence: tooMany };
  }
  return {
    ...open,
    pieces,
    power: powerToShowConformity(pieces, question),
    reason: null,
    sentence: sentenceOf(pieces, question, askedPower),
  };
}

/** Why no number of pieces can show it; null where some can. */
function impossible(question: ConformityQuestion): string | null {
  const room = roomOf(question);
  const { expectedMean, limit, side, of, guard = 0 } = question;
  const inward = (side === 'lower' ? expectedMean - limit : limit - expectedMean) - guard;
  if (inward <= 0)
    return 'The expected mean does not lie inside the limit: no number of pieces can be expected to show conformity.';
  if (of === 'mean' || room === null || room.margin > normalQuantile(of.share)) return null;
  return `With this mean and scatter ${percentWords(1 - normalCdf(room.margin))} of the pieces are expected outside the limit, more than the requirement leaves: no number of pieces can be expected to show it.`;
}

function sentenceOf(pieces: number, { of, confidence, cov_pct }: ConformityQuestion, askedPower: number): string {
  const what = of === 'mean' ? 'the mean lies' : `${percentWords(of.share)} of all pieces lie`;
  return `If the product is as expected (scatter ${Number(cov_pct.toPrecision(3))} %), ${pieces} pieces show with a chance of ${percentWords(askedPower)} that ${what} inside the limit, at ${percentWords(confidence)} confidence.`;
}

/** Chance that single pieces, and all of `n` of them, clear the limit and its guard band. */
export interface AllPassChance {
  readonly single: number;
  readonly all: number;
  readonly sentence: string;
}

/**
 * Chance that every one of `n` pieces clears the limit by the guard band (guarded acceptance, w = U), normal scatter taken. More
 * pieces make it smaller: a requirement on all pieces is not shown by pulling more.
 */
export function chanceAllPass(
  n: number,
  question: Pick<ConformityQuestion, 'expectedMean' | 'cov_pct' | 'limit' | 'side' | 'guard'>,
): AllPassChance {
  requirePieces(n, 1);
  const { expectedMean, limit, side, guard = 0 } = question;
  const room = roomOf({ ...question, confidence: 0.5, of: 'mean' });
  const inward = (side === 'lower' ? expectedMean - limit : limit - expectedMean) - guard;
  const single = room === null ? Number(inward >= 0) : normalCdf(room.margin);
  const all = single ** n;
  return {
    single,
    all,
    sentence: `A piece as expected passes with a chance of ${percentWords(single)}, all ${n} of them with ${percentWords(all)}.`,
  };
}
