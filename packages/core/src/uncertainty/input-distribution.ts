import type { RandomSource } from '../statistics/random.ts';

/** What is known of one input quantity, as a distribution (JCGM 101:2008 6.4). All numbers are in the unit of the input. */
export type InputDistribution =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardUncertainty: number }
  /** A mean of few readings: Student t scaled by its standard uncertainty (JCGM 101:2008 6.4.9). */
  | {
      readonly kind: 't';
      readonly mean: number;
      readonly standardUncertainty: number;
      readonly degreesOfFreedom: number;
    }
  | { readonly kind: 'rectangular'; readonly lower: number; readonly upper: number }
  /** Rectangular with limits that are themselves only known to +/- `inexactness` (curvilinear trapezoid, JCGM 101:2008 6.4.3). */
  | {
      readonly kind: 'rectangular, limits inexact';
      readonly lower: number;
      readonly upper: number;
      readonly inexactness: number;
    }
  /** `top` is the share of the width over which it is flat, 0 (triangle) to 1 (rectangle). */
  | { readonly kind: 'trapezoidal'; readonly lower: number; readonly upper: number; readonly top: number }
  | { readonly kind: 'triangular'; readonly lower: number; readonly upper: number }
  /** A quantity that swings like a sine between its limits. */
  | { readonly kind: 'arc sine'; readonly lower: number; readonly upper: number };

export type InputDistributionKind = InputDistribution['kind'];

/** The input as the law of propagation takes it: estimate, standard uncertainty, degrees of freedom (Infinity where it is exact). */
export interface InputStatement {
  readonly estimate: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

/** Expectation and standard deviation of a distribution; the latter null where it has none (t with 2 degrees of freedom or fewer). */
export interface Moments {
  readonly mean: number;
  readonly standardDeviation: number | null;
}

/** A value that lies within +/- `halfWidth` of `about`, every place as likely. */
export function evenlyWithin(halfWidth: number, about = 0): InputDistribution {
  return { kind: 'rectangular', lower: about - halfWidth, upper: about + halfWidth };
}

/** A value with a standard uncertainty; of few degrees of freedom it is a scaled t, else normal. */
export function estimated(mean: number, standardUncertainty: number, degreesOfFreedom = Infinity): InputDistribution {
  return degreesOfFreedom === Infinity
    ? { kind: 'normal', mean, standardUncertainty }
    : { kind: 't', mean, standardUncertainty, degreesOfFreedom };
}

/**
 * The statement of an input for the law of propagation.
 *
 * A t distribution gives its scale and its degrees of freedom (JCGM 100:2008 4.2, G.3); limits that are inexact give the
 * uncertainty of the limits as stated, and degrees of freedom for their inexactness (JCGM 100:2008 G.4.2). So neither counts twice.
 *
 * @throws RangeError for limits out of order or a negative uncertainty
 */
export function statementOf(distribution: InputDistribution): InputStatement {
  requireSound(distribution);
  switch (distribution.kind) {
    case 'normal':
      return {
        estimate: distribution.mean,
        standardUncertainty: distribution.standardUncertainty,
        degreesOfFreedom: Infinity,
      };
    case 't':
      return {
        estimate: distribution.mean,
        standardUncertainty: distribution.standardUncertainty,
        degreesOfFreedom: distribution.degreesOfFreedom,
      };
    default: {
      const width = distribution.upper - distribution.lower;
      return {
        estimate: (distribution.lower + distribution.upper) / 2,
        standardUncertainty: width * widthFactor(distribution),
        degreesOfFreedom: freedomOfLimits(distribution),
      };
    }
  }
}

type Bounded = Extract<InputDistribution, { readonly lower: number }>;

/** Standard deviation over width; for inexact limits as if they were exact. */
function widthFactor(distribution: Bounded): number {
  switch (distribution.kind) {
    case 'trapezoidal':
      return Math.sqrt((1 + distribution.top ** 2) / 24);
    case 'triangular':
      return Math.sqrt(1 / 24);
    case 'arc sine':
      return Math.sqrt(1 / 8);
    default:
      return Math.sqrt(1 / 12);
  }
}

function freedomOfLimits(distribution: Bounded): number {
  if (distribution.kind !== 'rectangular, limits inexact' || distribution.inexactness === 0) return Infinity;
  return freedomOfEstimate((2 * distribution.inexactness) / (distribution.upper - distribution.lower));
}

/**
 * Degrees of freedom of a standard uncertainty that is itself only known to a relative uncertainty: 1/2 (du/u)^-2
 * (JCGM 100:2008 G.4.2). 0.25 gives 8; 0 gives Infinity.
 */
export function freedomOfEstimate(relativeUncertainty: number): number {
  if (!(relativeUncertainty >= 0)) throw new RangeError('a relative uncertainty is not below 0');
  return 1 / (2 * relativeUncertainty ** 2);
}

/** Expectation and standard deviation (JCGM 101:2008 6.4.2 to 6.4.9). */
export function momentsOf(distribution: InputDistribution): Moments {
  const { estimate: mean, standardUncertainty } = statementOf(distribution);
  if (distribution.kind === 't') {
    const nu = distribution.degreesOfFreedom;
    return { mean, standardDeviation: nu > 2 ? standardUncertainty * Math.sqrt(nu / (nu - 2)) : null };
  }
  if (distribution.kind === 'rectangular, limits inexact') {
    return { mean, standardDeviation: Math.hypot(standardUncertainty, distribution.inexactness / 3) };
  }
  return { mean, standardDeviation: standardUncertainty };
}

/** A source of draws from a distribution (JCGM 101:2008 6.4; t by Bailey's polar method, Math. Comp. 62, 1994). */
export function drawsFrom(distribution: InputDistribution, random: RandomSource): () => number {
  requireSound(distribution);
  const { uniform, normal } = random;
  switch (distribution.kind) {
    case 'normal': {
      const { mean, standardUncertainty } = distribution;
      return () => mean + standardUncertainty * normal();
    }
    case 't': {
      const { mean, standardUncertainty, degreesOfFreedom } = distribution;
      return () => mean + standardUncertainty * student(uniform, degreesOfFreedom);
    }
    default:
      return boundedDraws(distribution, uniform);
  }
}

function boundedDraws(distribution: Bounded, uniform: () => number): () => number {
  const { lower, upper } = distribution;
  const half = (upper - lower) / 2;
  const middle = (lower + upper) / 2;
  switch (distribution.kind) {
    case 'rectangular':
      return () => lower + (upper - lower) * uniform();
    case 'rectangular, limits inexact':
      return () => {
        const from = lower + distribution.inexactness * (2 * uniform() - 1);
        return from + (lower + upper - 2 * from) * uniform();
      };
    case 'trapezoidal':
      return () => lower + half * ((1 + distribution.top) * uniform() + (1 - distribution.top) * uniform());
    case 'triangular':
      return () => lower + half * (uniform() + uniform());
    default:
      return () => middle + half * Math.sin(2 * Math.PI * uniform());
  }
}

function student(uniform: () => number, nu: number): number {
  let x = 0;
  let square = 0;
  do {
    x = 2 * uniform() - 1;
    square = x * x + (2 * uniform() - 1) ** 2;
  } while (square > 1 || square === 0);
  return x * Math.sqrt((nu * Math.expm1((-2 / nu) * Math.log(square))) / square);
}

function requireSound(distribution: InputDistribution): void {
  const numbers = Object.values(distribution).filter((value) => typeof value === 'number');
  if (numbers.some((value) => !Number.isFinite(value)))
    throw new RangeError('a distribution takes finite numbers only; many degrees of freedom are the normal');
  if ('mean' in distribution) {
    if (distribution.standardUncertainty < 0) throw new RangeError('a standard uncertainty is not below 0');
    if (distribution.kind === 't' && distribution.degreesOfFreedom <= 0)
      throw new RangeError('degrees of freedom are above 0');
  } else if (distribution.upper < distribution.lower) {
    throw new RangeError('the upper limit of a distribution is not below its lower limit');
  }
}
