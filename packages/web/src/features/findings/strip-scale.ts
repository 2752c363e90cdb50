import type { PieceFinding, ProductFinding } from '@provinghouse/contract';

/** One piece on the strip. */
export interface StripDot {
  readonly piece: string;
  readonly force_kN: number;
  readonly use: 'value' | 'at least' | 'none';
}

/** One product on the strip. */
export interface StripRow {
  readonly product: ProductFinding;
  readonly dots: readonly StripDot[];
  readonly minimum_kN: number | null;
  /** Where guarded acceptance begins: the highest of the pieces, so that a dot beyond it clears its own for certain. */
  readonly guard_kN: number | null;
}

export interface StripScale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
}

/** What the strip shows of each product. A pull that counts nowhere still has a force in its reading, and is shown hollow. */
export function stripRows(products: readonly ProductFinding[], pieces: readonly PieceFinding[]): StripRow[] {
  return products.map((product) => {
    const own = pieces.filter((piece) => piece.product === product.product);
    const judged = own.flatMap((piece) => piece.judgements.filter((one) => one.limit.quantity === 'breakingForce'));
    const guards = judged.flatMap((one) => one.acceptance.lower ?? []);
    return {
      product,
      dots: own.flatMap(dotOf),
      minimum_kN: judged[0]?.limit.lower ?? null,
      guard_kN: guards.length === 0 ? null : Math.max(...guards),
    };
  });
}

function dotOf(piece: PieceFinding): StripDot[] {
  const { pull } = piece;
  const force_kN = pull?.maximum?.value ?? pull?.reading?.maximumForce_kN ?? null;
  return pull === null || force_kN === null ? [] : [{ piece: piece.piece, force_kN, use: pull.use }];
}

/** A scale over all rows, with a little room and ticks at round numbers. Null when there is nothing to place. */
export function stripScale(rows: readonly Omit<StripRow, 'product'>[]): StripScale | null {
  const forces = rows.flatMap((row) =>
    [...row.dots.map((dot) => dot.force_kN), row.minimum_kN ?? [], row.guard_kN ?? []].flat(),
  );
  if (forces.length === 0) return null;
  const least = Math.min(...forces);
  const greatest = Math.max(...forces);
  const room = Math.max((greatest - least) * 0.08, greatest * 0.01, 0.1);
  const from = least - room;
  const to = greatest + room;
  const step = roundStep((to - from) / 7);
  const first = Math.ceil(from / step);
  const count = Math.floor(to / step) - first + 1;
  return {
    from,
    to,
    ticks: Array.from({ length: count }, (_, index) => Number(((first + index) * step).toPrecision(12))),
  };
}

/** The least of 1, 2, 5 times a power of ten that is not below `rough`. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((step) => step * power >= rough) ?? 10) * power;
}

/** Where a force lies on the strip, as CSS per cent. */
export function across(scale: StripScale, force_kN: number): string {
  return `${(100 * (force_kN - scale.from)) / (scale.to - scale.from)}%`;
}
