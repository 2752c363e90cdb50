import type { CampaignFinding } from '@provinghouse/contract';

/** How far a campaign has come: what there is to be found. */
export interface Progress {
  readonly hasProducts: boolean;
  readonly hasPieces: boolean;
  readonly hasPulls: boolean;
  readonly hasForces: boolean;
  readonly hasBreaks: boolean;
  readonly hasZinc: boolean;
  readonly hasValue: boolean;
}

export function progressOf({ products, pieces }: CampaignFinding): Progress {
  return {
    hasProducts: products.length > 0,
    hasPieces: pieces.length > 0,
    hasPulls: pieces.some((piece) => piece.pull !== null),
    hasForces: products.some((product) => product.breakingForce.n > 0 || product.breakingForce.atLeast.length > 0),
    hasBreaks: pieces.some((piece) => piece.breaks.length > 0),
    hasZinc: products.some((product) => product.zinc !== null),
    hasValue: products.some(
      (product) =>
        product.massPerMetre_kg_per_m !== null ||
        product.pricePerMetre !== null ||
        product.marginOverMinimum_pct !== null,
    ),
  };
}
