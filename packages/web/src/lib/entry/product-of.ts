import type { Row, RowHeld } from '@provinghouse/contract';

interface ProductRows {
  readonly samples: readonly RowHeld<'samples'>[];
  readonly products: readonly RowHeld<'products'>[];
}

/** The product a piece is of; null while its sample or product is not there. */
export function productOf({ sample }: Row<'pieces'>, { samples, products }: ProductRows): Row<'products'> | null {
  const code = samples.find(({ body }) => body.sample === sample)?.body.product;
  return products.find(({ body }) => body.product === code)?.body ?? null;
}
