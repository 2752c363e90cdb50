import { betaTails } from './beta.ts';
import { invertTail } from './inversion.ts';
import { normalQuantile, normalUpper } from './normal.ts';
import { requireNumber, requirePositive, requireProbability } from './probability.ts';

/** P(T > t) of Student's distribution with `nu` above 0 degrees of freedom (infinite: the normal distribution), computed directly. */
export function studentUpper(t: number, nu: number): number {
  requirePositive("Student's degrees of freedom", nu);
  requireNumber("Student's t", t);
  if (nu === Infinity) return normalUpper(t);
  const tail = upperOfSize(Math.abs(t), nu);
  return t > 0 ? tail : 1 - tail;
}

/** From here on the incomplete beta function loses digits, and what Wallace's form leaves out is below 1e-13 of the tail. */
const nearlyNormal = 1e7;

/** P(T > t) for t at least 0. */
function upperOfSize(t: number, nu: number): number {
  if (t === Infinity) return 0;
  if (t > 1e150) return upperOfSize(1e150, nu) * (1e150 / t) ** nu;
  // D. L. Wallace, Bounds on normal approximations to Student's and the chi-square distributions, 1959.
  if (nu > nearlyNormal) return normalUpper(((8 * nu + 1) / (8 * nu + 3)) * Math.sqrt(nu * Math.log1p((t * t) / nu)));
  const square = t * t;
  const place = { fromZero: square / (nu + square), fromOne: nu / (nu + square) };
  return 0.5 * betaTails(place, 0.5, nu / 2).upper;
}

/** P(T <= t) of Student's distribution with `nu` above 0 degrees of freedom (infinite: the normal distribution). */
export function studentCdf(t: number, nu: number): number {
  return studentUpper(-t, nu);
}

/** t with P(T <= t) = `p` for Student's distribution with `nu` above 0 degrees of freedom; infinite at p = 0 and 1. */
export function studentQuantile(p: number, nu: number): number {
  requireProbability(p);
  requirePositive("Student's degrees of freedom", nu);
  if (nu === Infinity) return normalQuantile(p);
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  const size = tail === 0 ? Infinity : sizeFor(tail, nu);
  return p < 0.5 ? -size : size;
}

function sizeFor(tail: number, nu: number): number {
  const logTail = (y: number) => Math.log(upperOfSize(Math.sinh(Math.max(0, y)), nu)) - Math.min(0, y);
  const guess = Math.asinh(-normalQuantile(tail));
  return Math.sinh(Math.max(0, invertTail({ logTail, logTarget: Math.log(tail), rising: false, guess, step: 0.1 })));
}
