import { chiSquaredQuantile, normalQuantile } from '../distribution/index.ts';
import type { ToleranceDemand } from './tolerance-factor.ts';

/** Howe's closed form of the two-sided factor (NIST/SEMATECH e-Handbook 7.2.6.3): to check the exact one by hand. */
export function howeToleranceFactor({ n, coverage, confidence }: ToleranceDemand): number {
  const nu = n - 1;
  const chiSquared = chiSquaredQuantile(1 - confidence, nu);
  return normalQuantile(0.5 + coverage / 2) * Math.sqrt((nu * (1 + 1 / n)) / chiSquared);
}

/** Natrella's closed form of the one-sided factor (NIST/SEMATECH e-Handbook 7.2.6.3); null where it has no solution. */
export function natrellaToleranceFactor({ n, coverage, confidence }: ToleranceDemand): number | null {
  const { a, b } = natrellaTerms({ n, coverage, confidence });
  const z = normalQuantile(coverage);
  const inner = z * z - a * b;
  return a <= 0 || inner < 0 ? null : (z + Math.sqrt(inner)) / a;
}

/** The terms a and b of Natrella's form. */
export function natrellaTerms({ n, coverage, confidence }: ToleranceDemand): {
  readonly a: number;
  readonly b: number;
} {
  const square = normalQuantile(confidence) ** 2;
  return { a: 1 - square / (2 * (n - 1)), b: normalQuantile(coverage) ** 2 - square / n };
}
