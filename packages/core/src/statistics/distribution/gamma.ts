import { invertTail } from './inversion.ts';
import { deviance, logGamma, stirlingRemainder } from './log-gamma.ts';
import { normalQuantile } from './normal.ts';
import { requireNumber, requirePositive, requireProbability, type Tails } from './probability.ts';

/** x^a e^-x / Gamma(a + 1). */
function leading(a: number, x: number): number {
  return Math.exp(-stirlingRemainder(a) - deviance(a, x)) / Math.sqrt(2 * Math.PI * a);
}

/** Both regularised incomplete gamma functions; series below a + 1, continued fraction above (Abramowitz and Stegun 6.5.29, 6.5.31). */
function gammaTails(x: number, a: number): Tails {
  requirePositive('the shape of a gamma distribution', a);
  requireNumber('the argument of a gamma distribution', x);
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  if (x < a + 1) {
    const lower = Math.min(1, leading(a, x) * risingSeries(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, leading(a, x) * a * upperFraction(a, x));
  return { lower: 1 - upper, upper };
}

/** 1 + x / (a + 1) + x^2 / ((a + 1)(a + 2)) + ... */
function risingSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 1e6; k += 1) {
    term *= x / (a + k);
    sum += term;
    if (term < 1e-17 * sum) break;
  }
  return sum;
}

/** Modified Lentz evaluation of 1 / (x + 1 - a - 1 (1 - a) / (x + 3 - a - ...)). */
function upperFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let value = d;
  for (let k = 1; k < 1e6; k += 1) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / (numerator * d + b || tiny);
    c = b + numerator / c || tiny;
    value *= d * c;
    if (Math.abs(d * c - 1) < 2e-16) break;
  }
  return value;
}

/** P(X <= x) of the gamma distribution with `shape` above 0 and scale 1. */
export function gammaCdf(x: number, shape: number): number {
  return gammaTails(x, shape).lower;
}

/** P(X > x) of the gamma distribution with `shape` above 0 and scale 1, computed directly. */
export function gammaUpper(x: number, shape: number): number {
  return gammaTails(x, shape).upper;
}

/** x with P(X <= x) = `p` for the gamma distribution with `shape` above 0 and scale 1; 0 at p = 0, infinity at p = 1. */
export function gammaQuantile(p: number, shape: number): number {
  requireProbability(p);
  requirePositive('the shape of a gamma distribution', shape);
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  return p <= 0.5 ? fromLower(p, shape) : gammaUpperQuantile(1 - p, shape);
}

/** x with P(X > x) = `q`: for tail probabilities too small to be written as 1 - p. */
export function gammaUpperQuantile(q: number, shape: number): number {
  requireProbability(q);
  requirePositive('the shape of a gamma distribution', shape);
  if (q === 0) return Infinity;
  if (q === 1) return 0;
  if (q > 0.5) return fromLower(1 - q, shape);
  const logTail = (y: number) => Math.log(gammaUpper(Math.exp(y), shape));
  const guess = Math.max(wilsonHilferty(-normalQuantile(q), shape), -Math.log(q));
  return Math.exp(invertTail({ logTail, logTarget: Math.log(q), rising: false, guess: Math.log(guess), step: 0.02 }));
}

function fromLower(p: number, shape: number): number {
  const logTail = (y: number) => logLower(y, shape);
  const cubic = wilsonHilferty(normalQuantile(p), shape);
  const guess = cubic > 0.1 * shape ? Math.log(cubic) : (Math.log(p) + logGamma(shape + 1)) / shape;
  return Math.exp(invertTail({ logTail, logTarget: Math.log(p), rising: true, guess, step: 0.02 }));
}

/** ln P(X <= e^y); where e^y is vanishing the first term of the series is all there is. */
function logLower(y: number, shape: number): number {
  const x = Math.exp(y);
  const lower = x < 1e-290 ? 0 : gammaCdf(x, shape);
  return lower > 1e-290 ? Math.log(lower) : shape * y - logGamma(shape + 1) - x;
}

/** Wilson and Hilferty's cube: a first guess only. */
function wilsonHilferty(z: number, shape: number): number {
  const cubeRoot = 1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape));
  return cubeRoot > 0 ? shape * cubeRoot ** 3 : 0;
}
