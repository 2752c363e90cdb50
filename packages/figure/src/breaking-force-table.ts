import type { BreakingForceDots } from './breaking-force-dots.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';

/** The numbers behind the dots, a row for each piece; a product without a force keeps its row. */
export function breakingForceDotsTable({ products }: BreakingForceDots): FigureTable {
  return {
    columns: [
      textColumn('product', 'product'),
      textColumn('piece', 'piece'),
      numberColumn('force_kN', 'breaking force', 'kN'),
      numberColumn('expanded_uncertainty_kN', 'U', 'kN', { digits: 2 }),
      textColumn('use', 'counts as'),
      numberColumn('minimum_kN', 'minimum', 'kN'),
      numberColumn('accepted_from_kN', 'accepted from', 'kN'),
      numberColumn('tolerance_bound_kN', 'tolerance bound', 'kN'),
    ],
    rows: products.flatMap((product) => {
      const limits = [product.minimum_kN, product.acceptedFrom_kN, product.tolerance?.bound ?? null];
      if (product.pieces.length === 0) return [[product.product, null, null, null, null, ...limits]];
      return product.pieces.map(({ piece, force_kN, expandedUncertainty_kN, use }) => [
        product.product,
        piece,
        force_kN,
        expandedUncertainty_kN,
        use,
        ...limits,
      ]);
    }),
  };
}
