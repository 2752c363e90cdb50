import type { Limit } from '../chain/specification.ts';
import { conformanceProbability } from './conformance-probability.ts';
import type { DecisionRule, Judgement, MeasuredValue, Verdict } from './verdict.ts';

interface Bounds {
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * Judges one measured value against one limit.
 *
 * Simple acceptance: the value itself decides (JCGM 106:2012 8.2). Guarded acceptance: the value must clear the limit by the guard
 * band w = U, is rejected when it fails it by U, and is inconclusive between (JCGM 106:2012 8.3; ILAC-G8:09/2019 4.2).
 * A value that is only "at least" can show conformity with a lower limit, never a failure.
 * No value, no limit, or no uncertainty under a guarded rule: `not judged`, with the reason.
 */
export function judge(limit: Limit, measured: MeasuredValue | null, rule: DecisionRule): Judgement {
  const none = {
    limit,
    measured,
    rule,
    acceptance: { lower: null, upper: null },
    probability: null,
    verdict: 'not judged',
  } as const;
  if (limit.lower === null && limit.upper === null) {
    return { ...none, reason: 'The specification gives a nominal value only, without limits.' };
  }
  if (measured === null) return { ...none, reason: 'Nothing was measured.' };
  if (measured.unit !== limit.unit)
    throw new RangeError(`a value in ${measured.unit} cannot meet a limit in ${limit.unit}`);
  const guard = rule === 'simple acceptance' ? 0 : measured.expandedUncertainty;
  if (guard === null) {
    return { ...none, reason: 'Its uncertainty is not known, and guarded acceptance cannot decide without one.' };
  }
  const acceptance = inside(limit, guard);
  if (measured.isAtLeast) return judgeAtLeast({ ...none, acceptance }, measured, limit);
  const verdict = decide(measured.value, { acceptance, rejection: inside(limit, -guard), rule });
  const probability = probabilityOf(limit, measured);
  return { ...none, acceptance, probability, verdict, reason: reasonFor(verdict, measured, limit) };
}

/** An uncertainty of nothing, or none at all, leaves no probability to state. */
function probabilityOf(limit: Limit, { value, expandedUncertainty, coverageFactor }: MeasuredValue): number | null {
  if (expandedUncertainty === null || expandedUncertainty <= 0) return null;
  return (
    conformanceProbability({ value, standardUncertainty: expandedUncertainty / coverageFactor }, limit)?.probability ??
    null
  );
}

function inside(limit: Limit, guard: number): Bounds {
  return {
    lower: limit.lower === null ? null : limit.lower + guard,
    upper: limit.upper === null ? null : limit.upper - guard,
  };
}

function within(value: number, bounds: Bounds): boolean {
  return (bounds.lower === null || value >= bounds.lower) && (bounds.upper === null || value <= bounds.upper);
}

function decide(
  value: number,
  bands: { readonly acceptance: Bounds; readonly rejection: Bounds; readonly rule: DecisionRule },
): Exclude<Verdict, 'not judged'> {
  if (within(value, bands.acceptance)) return 'conforms';
  if (bands.rule === 'simple acceptance') return 'does not conform';
  return within(value, bands.rejection) ? 'inconclusive' : 'does not conform';
}

function judgeAtLeast(open: Omit<Judgement, 'reason'>, measured: MeasuredValue, limit: Limit): Judgement {
  const reached = open.acceptance.lower !== null && measured.value >= open.acceptance.lower;
  if (limit.upper === null && reached) {
    return { ...open, verdict: 'conforms', reason: 'The value is only "at least", and already clears the limit.' };
  }
  return {
    ...open,
    reason: 'The value is only "at least": the record ended, clipped or was gripped before the true value was reached.',
  };
}

function reasonFor(verdict: Verdict, measured: MeasuredValue, limit: Limit): string {
  if (verdict === 'inconclusive') return 'The uncertainty of the value straddles the limit.';
  const beyond = {
    lower: limit.lower !== null && measured.value < limit.lower,
    upper: limit.upper !== null && measured.value > limit.upper,
  };
  if (verdict === 'conforms') return 'The value lies inside the limits under the decision rule.';
  return beyond.lower
    ? 'The value is below the limit.'
    : beyond.upper
      ? 'The value is above the limit.'
      : 'The value is outside the limits.';
}

const severity: readonly Verdict[] = ['does not conform', 'inconclusive', 'conforms'];

/**
 * The standing of a whole from its parts: one failure fails it, else one doubt leaves it inconclusive; what was not judged does not
 * count. Unless nothing was judged at all, or an `essential` part was not: nothing may be said to conform without its breaking force.
 */
export function standingOf(verdicts: readonly Verdict[], essential: readonly Verdict[] = []): Verdict {
  const worst = severity.find((verdict) => verdicts.includes(verdict)) ?? 'not judged';
  return worst === 'conforms' && essential.includes('not judged') ? 'not judged' : worst;
}

/** A requirement that could not be judged, and why. */
export function notJudged(limit: Limit, rule: DecisionRule, reason: string): Judgement {
  const acceptance = { lower: null, upper: null };
  return { limit, measured: null, rule, acceptance, probability: null, verdict: 'not judged', reason };
}
