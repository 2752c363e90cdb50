import { roundByUncertainty } from '../uncertainty/rounding.ts';
import type { ConformityRule } from './acceptance-limit.ts';
import type { ConformityLimits } from './conformance-probability.ts';
import type { ConformityDecision, ConformityValue } from './conformity.ts';

/** The decision as a report states it: value, limit, verdict, rule, chance of being wrong. */
export function conformitySentence(decision: Omit<ConformityDecision, 'sentence'>): string {
  const { value, limits, verdict } = decision;
  const head = `${valueWords(value)} against ${limitWords(limits, value.unit)}`;
  if (verdict === 'not judged') return `${head}: not judged. ${decision.reason}`;
  const rule = `${verdict} under ${ruleWords(decision.rule, decision)}`;
  return `${head}: ${rule}.${chanceWords(decision)}`;
}

function valueWords({ value, unit, expandedUncertainty, isAtLeast }: ConformityValue): string {
  const prefix = isAtLeast ? 'At least ' : '';
  const suffix = unit === '' ? '' : ` ${unit}`;
  if (!expandedUncertainty) return `${prefix}${Number(value.toPrecision(6))}${suffix}`;
  const rounded = roundByUncertainty({ value, uncertainty: expandedUncertainty });
  return `${prefix}${rounded.value}${suffix} (give or take ${rounded.uncertainty}${suffix})`;
}

function limitWords({ lower, upper }: ConformityLimits, unit: string): string {
  const suffix = unit === '' ? '' : ` ${unit}`;
  if (lower !== null && upper !== null) return `limits of ${lower} to ${upper}${suffix}`;
  if (lower !== null) return `a least value of ${lower}${suffix}`;
  return upper === null ? 'no limit' : `a greatest value of ${upper}${suffix}`;
}

function ruleWords(rule: ConformityRule, { bounds, value }: Omit<ConformityDecision, 'sentence'>): string {
  const suffix = value.unit === '' ? '' : ` ${value.unit}`;
  const band = (guard: number | null | undefined) => `a guard band of ${Number((guard ?? 0).toPrecision(2))}${suffix}`;
  switch (rule.kind) {
    case 'simple acceptance':
      return 'simple acceptance';
    case 'guarded acceptance':
      return `guarded acceptance with ${band(bounds?.acceptanceGuard)}`;
    case 'guarded rejection':
      return `guarded rejection with ${band(bounds?.rejectionGuard)}`;
    default:
      return `a stated risk of ${percent(rule.risk)}`;
  }
}

function chanceWords({ verdict, conformance, specificRisk }: Omit<ConformityDecision, 'sentence'>): string {
  if (conformance === null) return ' The chance that it is so cannot be told.';
  const meets = ` The true value meets the limit with a chance of ${percent(conformance.probability)}`;
  if (specificRisk === null) return `${meets}.`;
  return `${meets}; the chance that this ${verdict === 'conforms' ? 'acceptance' : 'rejection'} is wrong is ${percent(specificRisk)}.`;
}

/** Per cent without false digits at the ends: never 0 or 100. */
export function percent(probability: number): string {
  const value = 100 * probability;
  if (value < 0.01) return 'below 0.01 %';
  if (value > 99.99) return 'above 99.99 %';
  return `${Number(value.toPrecision(value > 99 ? 4 : 2))} %`;
}
