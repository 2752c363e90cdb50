import { invertTail } from './inversion.ts';
import { deviance, stirlingRemainder } from './log-gamma.ts';
import { requireNumber, requirePositive, requireProbability, type Tails } from './probability.ts';

/** A place in the unit interval told from both ends, so that neither distance loses digits. */
export interface UnitPlace {
  readonly fromZero: number;
  readonly fromOne: number;
}

/** Both regularised incomplete beta functions I_x(a, b) and I_(1-x)(b, a), by continued fraction on the side where it converges fast. */
export function betaTails({ fromZero: x, fromOne: y }: UnitPlace, a: number, b: number): Tails {
  requirePositive('the first shape of a beta distribution', a);
  requirePositive('the second shape of a beta distribution', b);
  requireNumber('the argument of a beta distribution', x);
  if (x <= 0) return { lower: 0, upper: 1 };
  if (y <= 0) return { lower: 1, upper: 0 };
  const front = leading(x, y, a, b);
  if (x < (a + 1) / (a + b + 2)) {
    const lower = Math.min(1, (front * fraction(x, a, b)) / a);
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, (front * fraction(y, b, a)) / b);
  return { lower: 1 - upper, upper };
}

/** x^a y^b / B(a, b). */
function leading(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const remainder = stirlingRemainder(n) - stirlingRemainder(a) - stirlingRemainder(b);
  return Math.sqrt((a / (2 * Math.PI)) * (b / n)) * Math.exp(remainder - deviance(a, n * x) - deviance(b, n * y));
}

/** Modified Lentz evaluation of the continued fraction of Abramowitz and Stegun 26.5.8. */
function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let value = d;
  for (let k = 1; k < 1e6; k += 1) {
    const even = ((k * (b - k)) / (a + 2 * k - 1)) * (x / (a + 2 * k));
    d = 1 / (1 + even * d || tiny);
    c = 1 + even / c || tiny;
    value *= d * c;
    const odd = ((-(a + k) / (a + 2 * k)) * (a + b + k) * x) / (a + 2 * k + 1);
    d = 1 / (1 + odd * d || tiny);
    c = 1 + odd / c || tiny;
    value *= d * c;
    if (Math.abs(d * c - 1) < 2e-16) break;
  }
  return value;
}

/** P(X <= x) of the beta distribution with shapes `a` and `b` above 0. */
export function betaCdf(x: number, a: number, b: number): number {
  return betaTails({ fromZero: x, fromOne: 1 - x }, a, b).lower;
}

/** P(X > x) of the beta distribution with shapes `a` and `b` above 0, computed directly. */
export function betaUpper(x: number, a: number, b: number): number {
  return betaTails({ fromZero: x, fromOne: 1 - x }, a, b).upper;
}

/** x with P(X <= x) = `p` for the beta distribution with shapes `a` and `b` above 0. */
export function betaQuantile(p: number, a: number, b: number): number {
  requireProbability(p);
  if (p === 0) return 0;
  if (p === 1) return 1;
  const place = p <= 0.5 ? betaPlace({ lower: p }, a, b) : betaPlace({ upper: 1 - p }, a, b);
  return place.fromZero;
}

/** The place that leaves the stated probability below it (`lower`) or above it (`upper`); each in (0, 1). */
export function betaPlace(
  tail: { readonly lower: number } | { readonly upper: number },
  a: number,
  b: number,
): UnitPlace {
  requirePositive('the first shape of a beta distribution', a);
  requirePositive('the second shape of a beta distribution', b);
  const rising = 'lower' in tail;
  const target = rising ? tail.lower : tail.upper;
  const logTail = (logit: number) => {
    const tails = betaTails(placeOf(logit), a, b);
    return Math.log(rising ? tails.lower : tails.upper);
  };
  const logit = invertTail({ logTail, logTarget: Math.log(target), rising, guess: Math.log(a / b), step: 0.1 });
  return placeOf(logit);
}

function placeOf(logit: number): UnitPlace {
  const small = Math.exp(-Math.abs(logit));
  const near = small / (1 + small);
  const other = 1 / (1 + small);
  return logit < 0 ? { fromZero: near, fromOne: other } : { fromZero: other, fromOne: near };
}
