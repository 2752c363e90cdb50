import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';

/** Where a number of pieces comes from, in the inputs of the plan. */
export const piecesSource = 'prepared in this campaign; as planned while none is';

/** The products with their pieces prepared; while a product has none, with as many as are planned, so that the plan can be looked at. */
export function asPlanned({ campaign, products }: Pick<CampaignFinding, 'campaign' | 'products'>): ProductFinding[] {
  const planned = campaign.pieces_per_product ?? 0;
  return products.map((product) =>
    product.pieces.length > 0
      ? product
      : { ...product, pieces: Array.from({ length: planned }, (_, at) => `${product.product}, piece ${at + 1}`) },
  );
}
