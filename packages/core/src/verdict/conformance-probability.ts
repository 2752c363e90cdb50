import { normalCdf, normalUpper, studentCdf, studentUpper } from '../statistics/distribution/index.ts';

/** Limits of a requirement; null on an open side. */
export interface ConformityLimits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** A measured value as far as the chance of its conformity goes, in the unit of the limits. */
export interface UncertainValue {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Of the standard uncertainty; null or absent: taken as exact, and the normal distribution serves. */
  readonly degreesOfFreedom?: number | null;
}

export interface ConformanceProbability {
  /** That the true value lies inside the limits, given the measured one. */
  readonly probability: number;
  /** That it lies below the lower, above the upper limit. */
  readonly below: number;
  readonly above: number;
  /** Distance of the value to the nearer limit, inward positive, in standard uncertainties; null for an uncertainty of 0. */
  readonly distance: number | null;
  readonly doubts: readonly string[];
  readonly method: string;
}

/**
 * Probability that the true value conforms, with nothing known beforehand but the measured value and its uncertainty
 * (JCGM 106:2012 7.1 to 7.4; with few degrees of freedom Student's t in place of the normal, JCGM 106:2012 A.4.4 and 8.3.3).
 *
 * An uncertainty of 0 decides by the value alone: 1 or 0, with a doubt. Null where there is no limit.
 * @throws RangeError for NaN, a negative uncertainty, degrees of freedom not above 0, or an upper limit below the lower
 */
export function conformanceProbability(
  measured: UncertainValue,
  limits: ConformityLimits,
): ConformanceProbability | null {
  requireSound(measured, limits);
  const { lower, upper } = limits;
  if (lower === null && upper === null) return null;
  const nu = measured.degreesOfFreedom ?? null;
  const method =
    nu === null
      ? 'Normal distribution about the measured value (JCGM 106:2012 7.3, 7.4)'
      : `Student distribution with ${Number(nu.toPrecision(3))} degrees of freedom about the measured value (JCGM 106:2012 7, 8.3.3)`;
  if (measured.standardUncertainty === 0) return { ...decided(measured.value, limits), method };
  const below = lower === null ? 0 : beyond((measured.value - lower) / measured.standardUncertainty, nu);
  const above = upper === null ? 0 : beyond((upper - measured.value) / measured.standardUncertainty, nu);
  return {
    probability: inside(measured, limits, nu),
    below,
    above,
    distance: nearest(measured, limits),
    doubts: [],
    method,
  };
}

function decided(value: number, { lower, upper }: ConformityLimits): Omit<ConformanceProbability, 'method'> {
  const below = lower !== null && value < lower ? 1 : 0;
  const above = upper !== null && value > upper ? 1 : 0;
  return {
    probability: 1 - below - above,
    below,
    above,
    distance: null,
    doubts: ['The value is said to have no uncertainty: the chance of conformity is only as good as that.'],
  };
}

/** Chance of lying more than `distance` standard uncertainties to one side. */
function beyond(distance: number, nu: number | null): number {
  return nu === null ? normalUpper(distance) : studentUpper(distance, nu);
}

function upTo(distance: number, nu: number | null): number {
  return nu === null ? normalCdf(distance) : studentCdf(distance, nu);
}

/** Differences of tails on the side where they are small, so that a chance near 0 keeps its digits. */
function inside(
  { value, standardUncertainty: u }: UncertainValue,
  limits: ConformityLimits,
  nu: number | null,
): number {
  const a = limits.lower === null ? -Infinity : (limits.lower - value) / u;
  const b = limits.upper === null ? Infinity : (limits.upper - value) / u;
  if (a === -Infinity) return upTo(b, nu);
  if (b === Infinity) return beyond(a, nu);
  return a > 0 ? beyond(a, nu) - beyond(b, nu) : upTo(b, nu) - upTo(a, nu);
}

function nearest({ value, standardUncertainty }: UncertainValue, { lower, upper }: ConformityLimits): number {
  const inward = [lower === null ? Infinity : value - lower, upper === null ? Infinity : upper - value];
  return Math.min(...inward) / standardUncertainty;
}

function requireSound(measured: UncertainValue, { lower, upper }: ConformityLimits): void {
  const { value, standardUncertainty, degreesOfFreedom } = measured;
  if (!Number.isFinite(value)) throw new RangeError('a measured value is a finite number');
  if (!(standardUncertainty >= 0 && Number.isFinite(standardUncertainty)))
    throw new RangeError('a standard uncertainty is finite and not below 0');
  if (degreesOfFreedom != null && !(degreesOfFreedom > 0)) throw new RangeError('degrees of freedom are above 0');
  for (const limit of [lower, upper])
    if (limit !== null && !Number.isFinite(limit)) throw new RangeError('a limit is a finite number, or null');
  if (lower !== null && upper !== null && upper < lower) throw new RangeError('the upper limit is not below the lower');
}
