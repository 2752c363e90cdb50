import { type ConformityRule, type DecisionBounds, decisionBounds } from './acceptance-limit.ts';
import {
  type ConformanceProbability,
  type ConformityLimits,
  conformanceProbability,
} from './conformance-probability.ts';
import { conformitySentence } from './conformity-sentence.ts';
import type { Verdict } from './verdict.ts';

/** A value as it comes to a decision on conformity. */
export interface ConformityValue {
  readonly value: number;
  readonly unit: string;
  /** Null: none is known. */
  readonly standardUncertainty: number | null;
  readonly degreesOfFreedom?: number | null;
  /** U = k u by the campaign's factor; the guarded rules need it. */
  readonly expandedUncertainty: number | null;
  /** The true value is not below `value` (clipped, stopped or gripped pull). */
  readonly isAtLeast?: boolean;
}

export interface ConformityDecision {
  readonly verdict: Verdict;
  readonly limits: ConformityLimits;
  readonly rule: ConformityRule;
  readonly value: ConformityValue;
  /** Null where the rule could not be applied. */
  readonly bounds: DecisionBounds | null;
  /** Chance that the true value conforms; null where no uncertainty is known or the value is only "at least". */
  readonly conformance: ConformanceProbability | null;
  /** Chance that this very verdict is wrong: of a false acceptance or a false rejection; null where nothing was decided. */
  readonly specificRisk: number | null;
  readonly reason: string;
  readonly doubts: readonly string[];
  readonly method: string;
  readonly sentence: string;
}

const methods = {
  'simple acceptance': 'Simple acceptance (JCGM 106:2012 8.2; ILAC-G8:09/2019 4.2.1)',
  'guarded acceptance': 'Guarded acceptance, w = U (JCGM 106:2012 8.3.2; ILAC-G8:09/2019 4.2.2)',
  'guarded rejection': 'Guarded rejection (JCGM 106:2012 8.3.3)',
  'stated risk':
    'Decision by the probability of conformity at a stated specific risk (JCGM 106:2012 7, 8.3; ILAC-G8:09/2019 5)',
} as const;

/**
 * Decides the conformity of one value with its limits, by any of the rules, and says with what chance the decision is wrong.
 *
 * A value that is only "at least" can show conformity with a lower limit, never a failure. Without limits, or without the
 * uncertainty a rule needs: `not judged`, with the reason.
 * @throws RangeError for NaN, a negative uncertainty, crossed limits
 */
export function decideConformity(
  value: ConformityValue,
  limits: ConformityLimits,
  rule: ConformityRule,
): ConformityDecision {
  const open = { limits, rule, value, method: methods[rule.kind] };
  const none = { ...open, bounds: null, conformance: null, specificRisk: null, doubts: [] };
  if (limits.lower === null && limits.upper === null)
    return finish({ ...none, verdict: 'not judged', reason: 'The specification sets no limit.' });
  const u = value.standardUncertainty;
  const conformance = u === null ? null : conformanceProbability({ ...value, standardUncertainty: u }, limits);
  const bounds = boundsOf(value, limits, rule);
  if (bounds === null)
    return finish({
      ...none,
      verdict: 'not judged',
      reason: 'Its uncertainty is not known, and this rule cannot decide without one.',
    });
  if (value.isAtLeast) return finish({ ...none, bounds, ...atLeast(value, limits, bounds) });
  const verdict = verdictOf(value.value, bounds, rule);
  return finish({
    ...open,
    bounds,
    conformance,
    verdict,
    specificRisk: riskOf(verdict, conformance),
    reason: reasonOf(verdict, bounds),
    doubts: [...(conformance?.doubts ?? []), ...boundsDoubts(bounds, limits), ...unitDoubts(value, limits)],
  });
}

function finish(decision: Omit<ConformityDecision, 'sentence'>): ConformityDecision {
  return { ...decision, sentence: conformitySentence(decision) };
}

function boundsOf(value: ConformityValue, limits: ConformityLimits, rule: ConformityRule): DecisionBounds | null {
  const { standardUncertainty, degreesOfFreedom = null, expandedUncertainty } = value;
  if (standardUncertainty === null && rule.kind === 'stated risk') return null;
  return decisionBounds(limits, rule, {
    standardUncertainty: standardUncertainty ?? 0,
    degreesOfFreedom,
    expandedUncertainty,
  });
}

function isInside(value: number, { lower, upper }: ConformityLimits): boolean {
  return (lower === null || value >= lower) && (upper === null || value <= upper);
}

function verdictOf(value: number, bounds: DecisionBounds, rule: ConformityRule): Verdict {
  if (isInside(value, bounds.acceptance)) return 'conforms';
  if (rule.kind === 'simple acceptance' || rule.kind === 'guarded rejection') return 'does not conform';
  return isInside(value, bounds.rejection) ? 'inconclusive' : 'does not conform';
}

function atLeast(
  { value }: ConformityValue,
  { upper }: ConformityLimits,
  { acceptance }: DecisionBounds,
): { readonly verdict: Verdict; readonly reason: string } {
  return upper === null && acceptance.lower !== null && value >= acceptance.lower
    ? { verdict: 'conforms', reason: 'The value is only "at least", and already clears the limit.' }
    : {
        verdict: 'not judged',
        reason:
          'The value is only "at least": the true value was not reached, so nothing can be said against the limit.',
      };
}

function riskOf(verdict: Verdict, conformance: ConformanceProbability | null): number | null {
  if (conformance === null) return null;
  if (verdict === 'conforms') return conformance.below + conformance.above;
  return verdict === 'does not conform' ? conformance.probability : null;
}

function reasonOf(verdict: Verdict, bounds: DecisionBounds): string {
  if (verdict === 'conforms') return 'The value lies inside the limits under the decision rule.';
  if (verdict === 'does not conform') return 'The value lies outside the limits under the decision rule.';
  return bounds.acceptanceGuard === null
    ? 'The limits lie closer together than the uncertainty can tell: no value could be accepted.'
    : 'The uncertainty of the value straddles the limit.';
}

function boundsDoubts({ acceptance }: DecisionBounds, { lower, upper }: ConformityLimits): string[] {
  const isCrossed = acceptance.lower !== null && acceptance.upper !== null && acceptance.lower > acceptance.upper;
  return isCrossed && lower !== null && upper !== null
    ? ['The guard bands meet: with this uncertainty no value could be accepted.']
    : [];
}

/** Newtons keyed as kilonewtons, or the other way round, lie a factor of 1000 from every limit. */
function unitDoubts({ value, unit }: ConformityValue, { lower, upper }: ConformityLimits): string[] {
  const limit = lower ?? upper ?? 0;
  const factor = Math.abs(value / limit);
  if (limit === 0 || value === 0 || (factor < 300 && factor > 1 / 300)) return [];
  return [`The value is ${Number(factor.toPrecision(2))} times the limit: see whether it is really in ${unit}.`];
}
