import { betaPlace, betaTails } from './beta.ts';
import { chiSquaredCdf, chiSquaredQuantile, chiSquaredUpper, chiSquaredUpperQuantile } from './chi-squared.ts';
import { requireNumber, requirePositive, requireProbability, type Tails } from './probability.ts';

function fTails(x: number, nu1: number, nu2: number): Tails {
  requireDegrees(nu1, nu2);
  requireNumber('F', x);
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  if (nu2 === Infinity) return { lower: chiSquaredCdf(nu1 * x, nu1), upper: chiSquaredUpper(nu1 * x, nu1) };
  const ratio = (nu1 * x) / nu2;
  return betaTails({ fromZero: ratio / (1 + ratio), fromOne: 1 / (1 + ratio) }, nu1 / 2, nu2 / 2);
}

function requireDegrees(nu1: number, nu2: number): void {
  requirePositive("Fisher's first degrees of freedom", nu1);
  requirePositive("Fisher's second degrees of freedom", nu2);
  if (nu1 === Infinity) throw new RangeError("Fisher's first degrees of freedom must be finite");
}

/** P(F <= x) of Fisher's distribution with `nu1` above 0 (finite) and `nu2` above 0 (may be infinite) degrees of freedom. */
export function fisherFCdf(x: number, nu1: number, nu2: number): number {
  return fTails(x, nu1, nu2).lower;
}

/** P(F > x) of Fisher's distribution, computed directly. */
export function fisherFUpper(x: number, nu1: number, nu2: number): number {
  return fTails(x, nu1, nu2).upper;
}

/** x with P(F <= x) = `p` for Fisher's distribution; 0 at p = 0, infinity at p = 1. */
export function fisherFQuantile(p: number, nu1: number, nu2: number): number {
  requireProbability(p);
  requireDegrees(nu1, nu2);
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  if (nu2 === Infinity) return chiSquaredQuantile(p, nu1) / nu1;
  return p <= 0.5 ? placed({ lower: p }, nu1, nu2) : placed({ upper: 1 - p }, nu1, nu2);
}

/** x with P(F > x) = `q`: for tail probabilities too small to be written as 1 - p. */
export function fisherFUpperQuantile(q: number, nu1: number, nu2: number): number {
  requireProbability(q);
  requireDegrees(nu1, nu2);
  if (q === 0) return Infinity;
  if (q === 1) return 0;
  if (nu2 === Infinity) return chiSquaredUpperQuantile(q, nu1) / nu1;
  return q <= 0.5 ? placed({ upper: q }, nu1, nu2) : placed({ lower: 1 - q }, nu1, nu2);
}

function placed(tail: { readonly lower: number } | { readonly upper: number }, nu1: number, nu2: number): number {
  const place = betaPlace(tail, nu1 / 2, nu2 / 2);
  return (nu2 / nu1) * (place.fromZero / place.fromOne);
}
