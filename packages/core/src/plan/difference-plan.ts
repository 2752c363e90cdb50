import { noncentralTUpper, studentQuantile } from '../statistics/distribution/index.ts';
import { crossing, leastWhole, percentWords, requireChance, requirePieces } from './search.ts';

/** A comparison of the means of two products, each with the same number of pieces. */
export interface DifferenceQuestion {
  /** Difference of the means that must not be missed, in the unit of the scatter; its sign does not matter. */
  readonly difference: number;
  /** Standard deviation of the pieces of either product. */
  readonly standardDeviations: readonly [number, number];
  /** Chance of telling equal products apart; 0.05 unless said otherwise. */
  readonly alpha?: number;
  /** 2: either may be the better; 1: only one direction counts. 2 unless said otherwise. */
  readonly sides?: 1 | 2;
}

/**
 * Chance that a two-sample t test of `n` pieces each tells the products apart, by the noncentral t; exact for equal scatters, else
 * with Welch's degrees of freedom. The far tail, which would see the wrong product ahead, is not counted. `n` need not be whole.
 * Null where neither product scatters.
 * @throws RangeError for n below 2 (above 1 is enough where not whole), a negative scatter, alpha outside 0 to 1
 */
export function powerToTellApart(n: number, question: DifferenceQuestion): number | null {
  const { difference, standardDeviations, alpha = 0.05, sides = 2 } = question;
  requirePieces(n, 1 + 1e-9);
  requireSound(question);
  const [first, second] = standardDeviations.map((sd) => sd ** 2 / n) as [number, number]; // a pair in, a pair out
  const variance = first + second;
  if (variance === 0) return null;
  const nu = ((n - 1) * variance ** 2) / (first ** 2 + second ** 2);
  const critical = -studentQuantile(alpha / sides, nu);
  return noncentralTUpper(critical, nu, Math.abs(difference) / Math.sqrt(variance));
}

export interface DifferencePlan {
  /** Of each product; null where no number is enough. */
  readonly pieces: number | null;
  /** The same, not rounded up; null where two pieces already do. */
  readonly exact: number | null;
  readonly power: number | null;
  readonly question: DifferenceQuestion;
  readonly askedPower: number;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

/** Pieces of each product needed to tell two products apart by a difference with a stated power. */
export function piecesToTellApart(question: DifferenceQuestion, askedPower = 0.9): DifferencePlan {
  requireChance({ 'the power': askedPower });
  const open = {
    question,
    askedPower,
    method: 'Power of the two-sample t test, noncentral t (Welch degrees of freedom)',
  };
  const none = { ...open, pieces: null, exact: null, power: null };
  const powerOf = (n: number) => powerToTellApart(n, question) ?? 1;
  if (question.difference === 0)
    return { ...none, doubts: [], sentence: 'A difference of nothing cannot be told by any number of pieces.' };
  const isStill = question.standardDeviations.every((sd) => sd === 0);
  const pieces = leastWhole((n) => powerOf(n) >= askedPower, 2);
  if (pieces === null)
    return {
      ...none,
      doubts: [],
      sentence: 'More than 100000 pieces of each product would be needed: plan for a larger difference.',
    };
  const exact = pieces === 2 ? null : crossing(powerOf, askedPower, { from: pieces - 1, to: pieces });
  return {
    ...open,
    pieces,
    exact,
    power: isStill ? null : powerOf(pieces),
    doubts: doubtsOf(question, isStill),
    sentence: `To see a difference of ${Math.abs(question.difference)} with a chance of ${percentWords(askedPower)}, ${pieces} pieces of each product are needed.`,
  };
}

function doubtsOf({ standardDeviations: [a, b] }: DifferenceQuestion, isStill: boolean): string[] {
  if (isStill) return ['No scatter was expected: two pieces are the least that can show there is none.'];
  return a === b ? [] : ['With unequal scatters the formula is a close approximation.'];
}

/** Smallest difference that `n` pieces of each product show with a stated power; null where neither scatters. */
export function detectableDifference(
  n: number,
  question: Omit<DifferenceQuestion, 'difference'>,
  askedPower = 0.9,
): number | null {
  requireChance({ 'the power': askedPower });
  requirePieces(n, 2);
  const scale = Math.hypot(...question.standardDeviations);
  if (scale === 0) return null;
  const powerOf = (difference: number) => powerToTellApart(n, { ...question, difference }) ?? 1;
  return crossing(powerOf, askedPower, { from: 0, to: 1000 * scale });
}

function requireSound({ difference, standardDeviations, alpha = 0.05 }: DifferenceQuestion): void {
  requireChance({ alpha });
  if (!Number.isFinite(difference)) throw new RangeError('a difference is a finite number');
  for (const sd of standardDeviations)
    if (!(sd >= 0 && Number.isFinite(sd))) throw new RangeError('a standard deviation is finite and not below 0');
}
