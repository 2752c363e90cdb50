import { summarise } from '../statistics/summary.ts';
import { budget } from '../uncertainty/budget.ts';
import type { CoverageWish } from '../uncertainty/coverage.ts';
import type { ConformityRule } from './acceptance-limit.ts';
import type { ConformityLimits } from './conformance-probability.ts';
import { type ConformityDecision, type ConformityValue, decideConformity } from './conformity.ts';

export interface SampleRequirement {
  /** Measured values of the pieces, all plain (none "at least"), in one unit. */
  readonly values: readonly number[];
  readonly unit: string;
  readonly limits: ConformityLimits;
  /** Standard uncertainty that all values share and no averaging removes: calibration. */
  readonly commonStandardUncertainty: number;
}

/** A decision on the mean of some pieces; `value` is null where there is none. */
export interface MeanDecision extends Omit<ConformityDecision, 'value'> {
  readonly n: number;
  readonly value: ConformityValue | null;
}

/**
 * Decides a requirement on the mean of the product from a few pieces: u^2 = s^2 / n + common^2, with n - 1 degrees of freedom behind
 * the first part (JCGM 100:2008 G.4), then as for a single value. One piece has no scatter: not judged.
 */
export function decideMean(
  sample: SampleRequirement,
  rule: ConformityRule,
  coverage: CoverageWish = { probability: 0.95 },
): MeanDecision {
  const { mean, sd, n } = summarise(sample.values);
  const found = budget({
    quantity: 'mean',
    unit: sample.unit,
    value: mean,
    coverage,
    terms: [
      {
        name: 'scatter of the pieces',
        standardUncertainty: (sd ?? 0) / Math.sqrt(Math.max(1, n)),
        sensitivity: 1,
        degreesOfFreedom: Math.max(1, n - 1),
        distribution: 't',
        source: `standard deviation of ${n} pieces`,
      },
      {
        name: 'calibration, common to all',
        standardUncertainty: sample.commonStandardUncertainty,
        sensitivity: 1,
        degreesOfFreedom: Infinity,
        distribution: 'normal',
        source: 'budgets of the single values',
      },
    ],
    unknown: sd === null ? ['fewer than two pieces show no scatter'] : [],
  });
  const decision = decideConformity(
    {
      value: mean ?? 0,
      unit: sample.unit,
      standardUncertainty: found.combinedStandardUncertainty,
      degreesOfFreedom: found.effectiveDegreesOfFreedom,
      expandedUncertainty: found.expandedUncertainty,
    },
    sample.limits,
    rule,
  );
  if (sd !== null) return { ...decision, n };
  const reason = `${n === 0 ? 'No piece was' : 'Only one piece was'} measured: nothing is known of the scatter, and so of the mean of others.`;
  return {
    ...decision,
    n,
    value: mean === null ? null : decision.value,
    verdict: 'not judged',
    bounds: null,
    conformance: null,
    specificRisk: null,
    reason,
    sentence: reason,
  };
}
