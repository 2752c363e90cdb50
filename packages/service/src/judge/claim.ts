import type { Row } from '@provinghouse/contract';
import { type Specification, type StrengthSplit, strengthSplit } from '@provinghouse/core';

/** A product with what it is judged by. */
export interface Claim {
  readonly product: Row<'products'>;
  readonly specification: Specification;
}

interface Force {
  readonly value: number;
  readonly isAtLeast: boolean;
  readonly standardUncertainty: number | null;
}

interface Area {
  readonly area_mm2: number | null;
  readonly uncertainty_mm2: number | null;
}

/** The steel-versus-size split of a force against what the product claims; null without a force or a gauged area. */
export function splitOf(
  { product, specification }: Claim,
  force: Force | null,
  area: Area | null,
): StrengthSplit | null {
  if (force === null || area?.area_mm2 == null) return null;
  return strengthSplit({
    breakingForce_kN: force.value,
    isAtLeast: force.isAtLeast,
    steelArea_mm2: area.area_mm2,
    nominalSize_mm: product.nominal_size_mm,
    specifiedStress_N_per_mm2: specification.gradeStress_N_per_mm2,
    minimumBreakingForce_kN: specification.limits.find((limit) => limit.quantity === 'breakingForce')?.lower ?? null,
    uncertainties: { breakingForce_kN: force.standardUncertainty, steelArea_mm2: area.uncertainty_mm2 },
  });
}
