import { gammaCdf, gammaQuantile, gammaUpper, gammaUpperQuantile } from './gamma.ts';

/** P(X <= x) of the chi-squared distribution with `nu` above 0 degrees of freedom. */
export function chiSquaredCdf(x: number, nu: number): number {
  return gammaCdf(x / 2, nu / 2);
}

/** P(X > x) of the chi-squared distribution with `nu` above 0 degrees of freedom, computed directly. */
export function chiSquaredUpper(x: number, nu: number): number {
  return gammaUpper(x / 2, nu / 2);
}

/** x with P(X <= x) = `p` for the chi-squared distribution with `nu` above 0 degrees of freedom. */
export function chiSquaredQuantile(p: number, nu: number): number {
  return 2 * gammaQuantile(p, nu / 2);
}

/** x with P(X > x) = `q`: for tail probabilities too small to be written as 1 - p. */
export function chiSquaredUpperQuantile(q: number, nu: number): number {
  return 2 * gammaUpperQuantile(q, nu / 2);
}
