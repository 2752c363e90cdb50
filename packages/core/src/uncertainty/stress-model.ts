import type { Budget } from './budget.ts';
import type { CoverageWish } from './coverage.ts';
import { type KnownValue, knownInput, requireAbove0 } from './instrument-input.ts';
import { type MeasurementModel, propagate } from './propagation.ts';

export interface StressFacts {
  readonly force_kN: KnownValue;
  /** Steel area of both legs, mm2. */
  readonly area_mm2: KnownValue;
}

/** Measurement model of the mean stress over both legs, F / A, in N/mm2. */
export function stressModel({ force_kN, area_mm2 }: StressFacts): MeasurementModel {
  requireAbove0({ 'force in kN': force_kN.value, 'area in mm2': area_mm2.value });
  return {
    quantity: 'mean stress',
    unit: 'N/mm2',
    inputs: [
      knownInput(force_kN, { name: 'force', unit: 'kN' }),
      knownInput(area_mm2, { name: 'steel area of both legs', unit: 'mm2' }),
    ],
    evaluate: ([force = 0, area = 0]) => (1000 * force) / area,
  };
}

/** Uncertainty budget of the mean stress, N/mm2. See {@link stressModel}. */
export function stressBudget(facts: StressFacts, options: { readonly coverage?: CoverageWish } = {}): Budget {
  return propagate(stressModel(facts), options).budget;
}

/** The result of a budget as an input of the next; null where it has no value or states no uncertainty. */
export function knownFrom(budget: Budget): KnownValue | null {
  const { value, combinedStandardUncertainty, effectiveDegreesOfFreedom, quantity } = budget;
  if (value === null || combinedStandardUncertainty === null) return null;
  return {
    value,
    standardUncertainty: combinedStandardUncertainty,
    degreesOfFreedom: effectiveDegreesOfFreedom,
    source: `budget of the ${quantity}`,
  };
}
