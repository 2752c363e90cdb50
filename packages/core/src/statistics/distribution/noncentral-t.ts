import { invertTail } from './inversion.ts';
import { normalLogCdf, normalQuantile, normalUpper } from './normal.ts';
import { requireNumber, requirePositive, requireProbability } from './probability.ts';
import { meanOverScale } from './scale-integral.ts';
import { studentCdf } from './student.ts';

function requireArguments(nu: number, delta: number): void {
  requirePositive('the degrees of freedom of noncentral t', nu);
  if (!Number.isFinite(delta)) throw new RangeError(`the noncentrality must be finite, not ${delta}`);
}

/**
 * P(T <= t) of the noncentral t distribution with `nu` degrees of freedom (at least 1; infinite: the normal distribution about delta)
 * and noncentrality `delta`: the integral of P(Z <= t s - delta) over the distribution of the standard deviation s,
 * accurate in both tails, which the usual series (AS 243) is not.
 */
export function noncentralTCdf(t: number, nu: number, delta: number): number {
  requireArguments(nu, delta);
  requireNumber('noncentral t', t);
  return t > delta ? 1 - lowerTail(-t, nu, -delta) : lowerTail(t, nu, delta);
}

/** P(T > t) of the noncentral t distribution, computed directly; see `noncentralTCdf`. */
export function noncentralTUpper(t: number, nu: number, delta: number): number {
  return noncentralTCdf(-t, nu, -delta);
}

/** P(T <= t) for t at or below delta, where it is the smaller tail or nearly so and the integrand has one scale. */
function lowerTail(t: number, nu: number, delta: number): number {
  if (t === -Infinity) return 0;
  if (nu === Infinity) return normalUpper(delta - t);
  if (delta === 0) return studentCdf(t, nu);
  if (t === 0) return normalUpper(delta);
  return Math.min(1, meanOverScale({ logOf: (s) => normalLogCdf(t * s - delta) }, nu));
}

/** t with P(T <= t) = `p` for the noncentral t distribution; infinite at p = 0 and 1. */
export function noncentralTQuantile(p: number, nu: number, delta: number): number {
  requireArguments(nu, delta);
  requireProbability(p);
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  if (p > 0.5) return -noncentralTQuantile(1 - p, nu, -delta);
  if (nu === Infinity) return delta + normalQuantile(p);
  const logTail = (y: number) => Math.log(noncentralTCdf(Math.sinh(y), nu, delta));
  const guess = Math.asinh(firstGuess(p, nu, delta));
  return Math.sinh(invertTail({ logTail, logTarget: Math.log(p), rising: true, guess, step: 0.02, tolerance: 1e-13 }));
}

/** Jennett and Welch's normal approximation where it has a root, else the shifted normal quantile: a first guess only. */
function firstGuess(p: number, nu: number, delta: number): number {
  const z = normalQuantile(p);
  const c = 1 - 1 / (4 * nu);
  const denominator = c * c - (z * z) / (2 * nu);
  const inner = denominator + (delta * delta) / (2 * nu);
  if (denominator < 0.05 || inner < 0) return delta + 2 * z;
  return (delta * c + z * Math.sqrt(inner)) / denominator;
}
