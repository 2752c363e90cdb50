/** A tail probability to be inverted: `logTail` is monotone in the coordinate y. */
export interface Inversion {
  readonly logTail: (y: number) => number;
  readonly logTarget: number;
  /** Does the tail probability grow with y? */
  readonly rising: boolean;
  readonly guess: number;
  /** First step of the search for a bracket; it doubles. */
  readonly step: number;
  /** Accepted difference of the logarithms, that is the relative error of the probability. */
  readonly tolerance?: number;
}

interface Bracket {
  /** Where the excess is at or below 0, and its value. */
  low: number;
  lowExcess: number;
  /** Where the excess is above 0, and its value. */
  high: number;
  highExcess: number;
}

/**
 * The coordinate at which a tail probability reaches its target.
 * On the logarithm of the tail the curve is nearly straight, so that the search holds its relative accuracy down to the least probability.
 */
export function invertTail(inversion: Inversion): number {
  const { logTail, logTarget, rising, tolerance = 4e-16 } = inversion;
  const excess = (y: number) => (rising ? logTail(y) - logTarget : logTarget - logTail(y));
  return narrow(bracketRoot(excess, inversion.guess, inversion.step), excess, tolerance);
}

function bracketRoot(excess: (y: number) => number, guess: number, firstStep: number): Bracket {
  let at = guess;
  let value = excess(at);
  const direction = value > 0 ? -1 : 1;
  for (let step = firstStep; step < 1e5; step *= 2) {
    const next = at + direction * step;
    const nextValue = excess(next);
    if (direction > 0 && nextValue > 0) return { low: at, lowExcess: value, high: next, highExcess: nextValue };
    if (direction < 0 && nextValue <= 0) return { low: next, lowExcess: nextValue, high: at, highExcess: value };
    at = next;
    value = nextValue;
  }
  throw new RangeError('the tail probability never reaches its target');
}

/** Chandrupatla's choice between inverse quadratic interpolation and halving, Advances in Engineering Software 28 (1997) 145-149. */
function narrow(bracket: Bracket, excess: (y: number) => number, tolerance: number): number {
  let { low: a, lowExcess: fa, high: b, highExcess: fb } = bracket;
  let fraction = interpolable(fa, fb) ? fa / (fa - fb) : 0.5;
  for (let round = 0; round < 200; round += 1) {
    if (Math.abs(fa) <= tolerance) return a;
    const width = Math.abs(b - a);
    const finest = 2.3e-16 * Math.abs(a) + 1e-300;
    if (width <= 2 * finest) break;
    const least = Math.min(0.5, finest / width);
    const t = a + Math.min(Math.max(fraction, least), 1 - least) * (b - a);
    const ft = excess(t);
    const sameSide = ft > 0 === fa > 0;
    const c = sameSide ? a : b;
    const fc = sameSide ? fa : fb;
    if (!sameSide) {
      b = a;
      fb = fa;
    }
    a = t;
    fa = ft;
    fraction = nextFraction({ a, fa, b, fb, c, fc });
  }
  return Math.abs(fa) <= Math.abs(fb) ? a : b;
}

interface Points {
  readonly a: number;
  readonly fa: number;
  readonly b: number;
  readonly fb: number;
  readonly c: number;
  readonly fc: number;
}

function nextFraction({ a, fa, b, fb, c, fc }: Points): number {
  if (!interpolable(fa, fb) || !Number.isFinite(fc)) return 0.5;
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const trusted = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
  if (!trusted) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}

function interpolable(fa: number, fb: number): boolean {
  return Number.isFinite(fa) && Number.isFinite(fb) && fa !== fb;
}
