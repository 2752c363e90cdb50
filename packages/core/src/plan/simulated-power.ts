import { betaQuantile, studentizedRangeQuantile, studentizedRangeUpper } from '../statistics/distribution/index.ts';
import { type RandomSource, seededRandom } from '../statistics/random.ts';
import { requireChance, requirePieces } from './search.ts';

/** A chance found by trying: the share of trials in which the plan did what it should. */
export interface SimulatedPower {
  readonly power: number;
  /** Exact 95 % interval of the chance, from the number of trials (Clopper and Pearson 1934). */
  readonly lower: number;
  readonly upper: number;
  readonly trials: number;
  readonly seed: number;
  readonly method: string;
}

/** Runs a plan `trials` times; for plans without a formula. The same seed gives the same answer. */
export function simulatePower(plan: {
  readonly trial: (random: RandomSource) => boolean;
  readonly trials: number;
  readonly seed: number;
}): SimulatedPower {
  const { trial, trials, seed } = plan;
  requirePieces(trials, 1);
  const random = seededRandom(seed);
  let hits = 0;
  for (let i = 0; i < trials; i++) if (trial(random)) hits++;
  return {
    power: hits / trials,
    lower: hits === 0 ? 0 : betaQuantile(0.025, hits, trials - hits + 1),
    upper: hits === trials ? 1 : betaQuantile(0.975, hits + 1, trials - hits),
    trials,
    seed,
    method: 'Simulation, interval of Clopper and Pearson',
  };
}

export interface AmongProducts {
  /** Products compared, all pairs at once. */
  readonly products: number;
  /** Difference between two of them, and the scatter of the pieces, in one unit. */
  readonly difference: number;
  readonly standardDeviation: number;
  readonly piecesEach: number;
  /** Chance of telling any equal pair apart; 0.05 unless said otherwise. */
  readonly alpha?: number;
  readonly seed: number;
  readonly trials?: number;
}

/**
 * Chance that two products which differ are told apart in a comparison of all pairs of `products` by Games and Howell (Welch's
 * degrees of freedom, studentized range), by simulation: no formula is known. 2000 trials unless said otherwise.
 * @throws RangeError for fewer than two products or pieces, or a scatter not above 0
 */
export function powerAmongProducts(question: AmongProducts): SimulatedPower {
  const { products, difference, standardDeviation: sd, piecesEach: n, alpha = 0.05, seed, trials = 2000 } = question;
  requireChance({ alpha });
  requirePieces(n, 2);
  if (!(Number.isInteger(products) && products >= 2)) throw new RangeError('at least two products are compared');
  if (!(sd > 0)) throw new RangeError('a scatter is above 0');
  // Welch's degrees of freedom lie between these two, so most trials are decided without the range distribution.
  const surelyApart = studentizedRangeQuantile(1 - alpha, products, n - 1);
  const surelyNot = studentizedRangeQuantile(1 - alpha, products, 2 * (n - 1));
  return simulatePower({
    seed,
    trials,
    trial: (random) => {
      const [a, b] = [drawnSummary(random, n), drawnSummary(random, n)];
      const variance = (a.variance + b.variance) / n;
      const nu = ((n - 1) * (a.variance + b.variance) ** 2) / (a.variance ** 2 + b.variance ** 2);
      const q = (Math.SQRT2 * Math.abs(difference / sd + a.mean - b.mean)) / Math.sqrt(variance);
      if (q > surelyApart) return true;
      return q > surelyNot && studentizedRangeUpper(q, products, nu) < alpha;
    },
  });
}

function drawnSummary(random: RandomSource, n: number): { readonly mean: number; readonly variance: number } {
  const values = Array.from({ length: n }, random.normal);
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1) };
}
