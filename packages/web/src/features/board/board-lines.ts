import type { CampaignFinding, PieceFinding, ProductFinding } from '@provinghouse/contract';
import { readerStanding, type Verdict } from '@provinghouse/core';
import { text } from '../../lib/text.ts';

/** A line of the board: the head of a product, or one of its pieces. */
export type BoardLine =
  | { readonly kind: 'product'; readonly product: ProductFinding; readonly pieces: number }
  | { readonly kind: 'piece'; readonly piece: PieceFinding };

export interface BoardFilter {
  /** Words that must all stand in what is said of a piece, whatever their case. */
  readonly words: string;
  /** Standing of a piece; null for any. */
  readonly verdict: Verdict | null;
}

/** The lines of the board in their order; a product none of whose pieces is meant has no head either, unless everything is shown. */
export function boardLines({ products, pieces }: Pick<CampaignFinding, 'products' | 'pieces'>, filter: BoardFilter) {
  const words = filter.words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const isWhole = words.length === 0 && filter.verdict === null;
  const byProduct = Map.groupBy(pieces, (piece) => piece.product);
  return products.flatMap((product): BoardLine[] => {
    const own = byProduct.get(product.product) ?? [];
    const meant = isWhole ? own : own.filter((piece) => isMeant(piece, product, { words, verdict: filter.verdict }));
    if (meant.length === 0 && !isWhole) return [];
    return [
      { kind: 'product', product, pieces: meant.length },
      ...meant.map((piece): BoardLine => ({ kind: 'piece', piece })),
    ];
  });
}

interface Meant {
  readonly words: readonly string[];
  readonly verdict: Verdict | null;
}

function isMeant(piece: PieceFinding, product: ProductFinding, { words, verdict }: Meant): boolean {
  if (verdict !== null && piece.standing !== verdict) return false;
  if (words.length === 0) return true;
  const breaks = piece.breaks.flatMap(({ mode, position }) => [mode, position]);
  const readers = text.readers.short(readerStanding(piece.breaks)) ?? '';
  const said = [
    piece.piece,
    product.product,
    product.supplier,
    piece.sample,
    piece.pull?.pull ?? '',
    readers,
    ...breaks,
  ];
  const all = said.join('\n').toLowerCase();
  return words.every((word) => all.includes(word));
}
