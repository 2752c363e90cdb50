import { binomialCdf, normalCdf, normalQuantile } from '../statistics/distribution/index.ts';
import { crossing, leastWhole, percentWords, requireChance, requirePieces } from './search.ts';

export interface FractionQuestion {
  /** Share of all pieces that must hold: 0.95. */
  readonly reliability: number;
  readonly confidence: number;
  /** Failures among the pieces that the plan forgives; 0 (success run) unless said otherwise. */
  readonly allowedFailures?: number;
}

export interface FractionPlan {
  readonly pieces: number | null;
  /** Confidence that this number gives. */
  readonly confidence: number | null;
  readonly question: FractionQuestion;
  readonly method: string;
  readonly sentence: string;
}

/**
 * Pieces that must be proof tested to bound the share that holds: the least n with P(at most c failures of n, each failing with
 * chance 1 - R) not above 1 - C. Without failures it is ln(1 - C) / ln R, rounded up (success run).
 * @throws RangeError for reliability or confidence outside 0 to 1, or allowed failures not a whole number
 */
export function piecesToBoundFraction(question: FractionQuestion): FractionPlan {
  const { reliability, confidence, allowedFailures = 0 } = question;
  requireChance({ 'the reliability': reliability, 'the confidence': confidence });
  if (!(Number.isInteger(allowedFailures) && allowedFailures >= 0))
    throw new RangeError('failures are counted in whole numbers');
  const doubt = (n: number) => binomialCdf(allowedFailures, n, 1 - reliability);
  // A rounding error above 1 - C must not cost a piece.
  const pieces = leastWhole((n) => doubt(n) <= (1 - confidence) * (1 + 1e-12), allowedFailures + 1);
  const method =
    allowedFailures === 0
      ? 'Success run, n = ln(1 - C) / ln R'
      : 'Binomial demonstration, P(at most c failures) not above 1 - C (Clopper and Pearson 1934)';
  const run = allowedFailures === 0 ? 'none of them fails' : `not more than ${allowedFailures} of them fail`;
  return {
    pieces,
    confidence: pieces === null ? null : 1 - doubt(pieces),
    question,
    method,
    sentence:
      pieces === null
        ? 'More than 100000 pieces would be needed.'
        : `If ${pieces} pieces are tested and ${run}, at least ${percentWords(reliability)} of all such pieces hold, with ${percentWords(confidence)} confidence.`,
  };
}

/** A comparison of the failing shares of two products, each with the same number of pieces. */
export interface ShareQuestion {
  readonly first: number;
  readonly second: number;
  readonly alpha?: number;
  readonly sides?: 1 | 2;
}

/**
 * Chance that `n` pieces each tell two shares apart, by the normal approximation of the two-sample test of proportions (far tail not
 * counted). Rough below ten expected failures and ten expected successes.
 */
export function powerToTellSharesApart(n: number, { first, second, alpha = 0.05, sides = 2 }: ShareQuestion): number {
  requireChance({ 'the first share': first, 'the second share': second, alpha });
  requirePieces(n, 1);
  const critical = -normalQuantile(alpha / sides);
  const mean = (first + second) / 2;
  const spread = first * (1 - first) + second * (1 - second);
  const reach = Math.sqrt(n) * Math.abs(first - second) - critical * Math.sqrt(2 * mean * (1 - mean));
  return normalCdf(reach / Math.sqrt(spread));
}

/** Pieces of each product needed to tell two shares apart; `exact` is not rounded up. Null for equal shares. */
export function piecesToTellSharesApart(
  question: ShareQuestion,
  power = 0.9,
): { readonly pieces: number; readonly exact: number } | null {
  const { first, second, alpha = 0.05, sides = 2 } = question;
  requireChance({ 'the first share': first, 'the second share': second, alpha, 'the power': power });
  if (first === second) return null;
  const mean = (first + second) / 2;
  const spread = first * (1 - first) + second * (1 - second);
  const reach =
    -normalQuantile(alpha / sides) * Math.sqrt(2 * mean * (1 - mean)) + normalQuantile(power) * Math.sqrt(spread);
  const exact = Math.max(1, (reach / (first - second)) ** 2);
  return { pieces: Math.ceil(exact), exact };
}

/** Least second share above `first` that `n` pieces each tell apart from it; null where even certainty would not do. */
export function detectableShare(n: number, question: Omit<ShareQuestion, 'second'>, power = 0.9): number | null {
  requireChance({ 'the power': power });
  return crossing((second) => powerToTellSharesApart(n, { ...question, second }), power, {
    from: question.first,
    to: 1 - 1e-12,
  });
}
