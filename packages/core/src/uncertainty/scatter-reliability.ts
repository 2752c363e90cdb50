import { logGamma } from '../statistics/distribution/index.ts';

/**
 * Relative standard deviation of the standard deviation of `n` normal readings: how far a scatter from few readings can be trusted.
 * sqrt(1 - c4^2) / c4 (JCGM 100:2008 Table E.1, note to its exact values). Null below two readings.
 * @example reliabilityOfScatter(2) // 0.756: from two readings a standard deviation is only known to three quarters of itself
 */
export function reliabilityOfScatter(n: number): number | null {
  if (!(Number.isInteger(n) && n >= 0)) throw new RangeError('a number of readings is a whole number');
  if (n < 2) return null;
  // The square of c4, as a logarithm: 1 - c4^2 is 1/(2n) for large n and would lose digits otherwise.
  const logSquare = Math.log(2 / (n - 1)) + 2 * (logGamma(n / 2) - logGamma((n - 1) / 2));
  return Math.sqrt(-Math.expm1(logSquare) / Math.exp(logSquare));
}
