import type { PlannedPulls, Row, RowHeld } from '@provinghouse/contract';

/** A piece in the order of the plan, with the pulls that were made of it. */
export interface PlannedPiece {
  /** Place in the order drawn; null where no order was drawn. */
  readonly place: number | null;
  readonly block: number | null;
  readonly piece: string;
  readonly product: string;
  readonly pulls: readonly RowHeld<'pulls'>[];
  /** The first piece in the order that nobody has pulled. */
  readonly isNext: boolean;
}

interface Listed {
  readonly planned: PlannedPulls | null;
  readonly pieces: readonly Row<'pieces'>[];
  readonly samples: readonly Row<'samples'>[];
  readonly pulls: readonly RowHeld<'pulls'>[];
}

/** All pieces in the order they are to be pulled in; without an order those that were pulled in the order of their pulls, then the others. */
export function plannedList({ planned, pieces, samples, pulls }: Listed): PlannedPiece[] {
  const products = new Map(samples.map(({ sample, product }) => [sample, product]));
  const made = Map.groupBy(pulls, ({ body }) => body.piece);
  const places = new Map(planned?.order.map((one) => [one.piece, one]) ?? []);
  const firstPulled = new Map(
    pulls.toReversed().map(({ body }) => [body.piece, pulls.findIndex((one) => one.body.piece === body.piece)]),
  );
  const rank = (piece: string, at: number) =>
    places.get(piece)?.position ?? pieces.length + (firstPulled.get(piece) ?? pulls.length + at);
  const listed = pieces
    .map(({ piece, sample }, at) => ({
      rank: rank(piece, at),
      place: places.get(piece)?.position ?? null,
      block: places.get(piece)?.block ?? null,
      piece,
      product: products.get(sample) ?? '',
      pulls: made.get(piece) ?? [],
    }))
    .sort((a, b) => a.rank - b.rank);
  const next = listed.find((one) => one.pulls.length === 0)?.piece;
  return listed.map(({ rank: _, ...one }) => ({ ...one, isNext: one.piece === next }));
}
