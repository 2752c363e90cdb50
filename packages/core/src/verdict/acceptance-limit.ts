import { normalQuantile, studentQuantile } from '../statistics/distribution/index.ts';
import { type ConformityLimits, conformanceProbability, type UncertainValue } from './conformance-probability.ts';

/** The rule by which a value meets its limits; agreed before the first pull (ISO/IEC 17025:2017 7.1.3). */
export type ConformityRule =
  /** The value itself decides (JCGM 106:2012 8.2). */
  | { readonly kind: 'simple acceptance' }
  /** The value must clear the limit by `multiplier` times U; 1 unless said otherwise (JCGM 106:2012 8.3.2; ILAC-G8:09/2019 4.2). */
  | { readonly kind: 'guarded acceptance'; readonly multiplier?: number }
  /** The value must fail the limit by `multiplier` times U before it is rejected (JCGM 106:2012 8.3.3). */
  | { readonly kind: 'guarded rejection'; readonly multiplier?: number }
  /** Accepted when the chance that it does not conform is at most `risk`; rejected when the chance that it conforms is. */
  | { readonly kind: 'stated risk'; readonly risk: number };

/** Where a rule accepts, and outside which bounds it rejects; between the two a value is inconclusive. */
export interface DecisionBounds {
  readonly acceptance: ConformityLimits;
  readonly rejection: ConformityLimits;
  /** Guard band on the side of acceptance and of rejection, inward and outward positive; null where the limits leave no room. */
  readonly acceptanceGuard: number | null;
  readonly rejectionGuard: number | null;
}

export interface RuleUncertainty {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom?: number | null;
  /** U = k u; needed by the guarded rules. */
  readonly expandedUncertainty: number | null;
}

/**
 * Bounds of acceptance and rejection of a rule. Null where a guarded rule has no U.
 *
 * For a stated risk the guard band is worked out so that a value at the acceptance limit does not conform with just that chance, both
 * limits counted; limits too close together for the uncertainty accept nothing (`acceptanceGuard` null, bounds crossed at the middle).
 * @throws RangeError for a multiplier not above 0 or a risk outside 0 to 1/2
 */
export function decisionBounds(
  limits: ConformityLimits,
  rule: ConformityRule,
  known: RuleUncertainty,
): DecisionBounds | null {
  switch (rule.kind) {
    case 'simple acceptance':
      return bounds(limits, 0, 0);
    case 'stated risk':
      return riskBounds(limits, rule.risk, known);
    default: {
      const multiplier = rule.multiplier ?? 1;
      if (!(multiplier > 0)) throw new RangeError('a guard band is a multiple above 0 of U');
      if (known.expandedUncertainty === null) return null;
      const guard = multiplier * known.expandedUncertainty;
      // Guarded rejection leaves no doubtful zone of its own: what is not rejected is accepted.
      return rule.kind === 'guarded acceptance' ? bounds(limits, guard, guard) : bounds(limits, -guard, guard);
    }
  }
}

function bounds(limits: ConformityLimits, acceptanceGuard: number, rejectionGuard: number): DecisionBounds {
  return {
    acceptance: shifted(limits, acceptanceGuard),
    rejection: shifted(limits, -rejectionGuard),
    acceptanceGuard,
    rejectionGuard,
  };
}

function shifted({ lower, upper }: ConformityLimits, inward: number): ConformityLimits {
  return { lower: lower === null ? null : lower + inward, upper: upper === null ? null : upper - inward };
}

function riskBounds(limits: ConformityLimits, risk: number, known: RuleUncertainty): DecisionBounds {
  if (!(risk > 0 && risk <= 0.5)) throw new RangeError('a stated risk lies above 0 and is at most 1/2');
  const acceptanceGuard = guardForRisk(limits, risk, known);
  const rejectionGuard = guardForRejection(limits, risk, known);
  return {
    acceptance: acceptanceGuard === null ? nowhere(limits) : shifted(limits, acceptanceGuard),
    rejection: rejectionGuard === null ? nowhere(limits) : shifted(limits, -rejectionGuard),
    acceptanceGuard,
    rejectionGuard,
  };
}

/** Crossed bounds, inside which nothing lies. */
function nowhere({ lower, upper }: ConformityLimits): ConformityLimits {
  const middle = ((lower ?? 0) + (upper ?? 0)) / 2;
  const width = (upper ?? 0) - (lower ?? 0);
  return { lower: middle + width, upper: middle - width };
}

/**
 * Guard band for a specific risk: z or t times u for one limit (JCGM 106:2012 8.3.2.2, 8.3.3), a little more where the second limit is
 * near. Null where even the middle of the limits holds more risk.
 */
export function guardForRisk(limits: ConformityLimits, risk: number, known: RuleUncertainty): number | null {
  const { standardUncertainty, degreesOfFreedom = null } = known;
  const { lower, upper } = limits;
  const oneSided = standardUncertainty * factorFor(risk, degreesOfFreedom);
  if (lower === null || upper === null) return oneSided;
  const riskAt = (guard: number) => failureChance({ ...known, value: lower + guard }, limits);
  const half = (upper - lower) / 2;
  if (riskAt(half) > risk) return null;
  return bisect((guard) => riskAt(guard) <= risk, { no: Math.min(oneSided, half), yes: half });
}

/** The chance of conformity outside a limit is less with a second limit beyond; null where no value outside reaches the risk. */
function guardForRejection(limits: ConformityLimits, risk: number, known: RuleUncertainty): number | null {
  const { standardUncertainty, degreesOfFreedom = null } = known;
  const { lower, upper } = limits;
  const oneSided = standardUncertainty * factorFor(risk, degreesOfFreedom);
  if (lower === null || upper === null) return oneSided;
  const chanceAt = (guard: number) => 1 - failureChance({ ...known, value: lower - guard }, limits);
  // Narrow limits: a value at the limit, even inside it, may already conform with less than the stated risk.
  const half = (upper - lower) / 2;
  if (chanceAt(-half) <= risk) return null;
  return bisect((guard) => chanceAt(guard) <= risk, { no: -half, yes: oneSided });
}

function failureChance(measured: UncertainValue, limits: ConformityLimits): number {
  const found = conformanceProbability(measured, limits);
  return found === null ? 0 : found.below + found.above;
}

/** z or t that is exceeded with chance `risk`. */
export function factorFor(risk: number, degreesOfFreedom: number | null): number {
  return degreesOfFreedom === null ? -normalQuantile(risk) : -studentQuantile(risk, degreesOfFreedom);
}

function bisect(holds: (at: number) => boolean, from: { readonly no: number; readonly yes: number }): number {
  let { no, yes } = from;
  if (holds(no)) return no;
  for (let i = 0; i < 200 && Math.abs(yes - no) > 1e-15 * Math.max(Math.abs(yes), Math.abs(no)); i++) {
    const middle = (no + yes) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
