import { normalCdf, normalQuantile, studentCdf, studentQuantile } from '../statistics/distribution/index.ts';

/** How wide an interval is asked for: by its probability, or by a factor agreed beforehand. */
export type CoverageWish = { readonly probability: number } | { readonly factor: number };

/** The interval y +/- k u and how often it holds the value. */
export interface Coverage {
  readonly factor: number;
  readonly probability: number;
}

/**
 * Coverage factor t_p(nu) for a probability, or the probability that a factor covers, at `degreesOfFreedom` (Infinity: normal).
 * Degrees of freedom are stated to one decimal and cut to the next lower whole number, but not below 1 (JCGM 100:2008 G.4.1, G.6.4).
 *
 * @throws RangeError for a probability outside 0 to 1 or a factor not above 0
 */
export function coverage(wish: CoverageWish, degreesOfFreedom: number): Coverage {
  const nu = wholeFreedom(degreesOfFreedom);
  if ('factor' in wish) {
    if (!(wish.factor > 0 && Number.isFinite(wish.factor))) throw new RangeError('a coverage factor is above 0');
    const below = nu === Infinity ? normalCdf(wish.factor) : studentCdf(wish.factor, nu);
    return { factor: wish.factor, probability: 2 * below - 1 };
  }
  if (!(wish.probability > 0 && wish.probability < 1))
    throw new RangeError('a coverage probability lies between 0 and 1');
  const upTo = (1 + wish.probability) / 2;
  const factor = nu === Infinity ? normalQuantile(upTo) : studentQuantile(upTo, nu);
  return { factor, probability: wish.probability };
}

/** Stated to one decimal, as JCGM 100:2008 prints them (G.4.1: 18.996 is 19.0), then cut to a whole number. */
export function wholeFreedom(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) throw new RangeError('degrees of freedom are above 0');
  if (degreesOfFreedom === Infinity) return Infinity;
  return Math.max(1, Math.floor(Math.round(10 * degreesOfFreedom) / 10));
}
