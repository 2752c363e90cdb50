import { createHash } from 'node:crypto';
import { type CampaignRows, type CellValue, isBlind, type Row, type TableName, tables } from '@provinghouse/contract';

/** What stands in place of the codes of products and samples while a campaign is blind. */
export interface Masks {
  readonly products: ReadonlyMap<string, string>;
  readonly samples: ReadonlyMap<string, string>;
  /** Whether a text names a product, a supplier or a sample as a word of its own, whatever its case. */
  readonly tells: (text: string) => boolean;
}

type Named = Pick<CampaignRows, 'products' | 'samples'>;

/**
 * Neutral names for products and samples. Their order follows a hash and not the order of entry, which somebody may remember; it stays
 * the same as long as the campaign is blind.
 */
export function masksOf(rows: Named, campaign: Row<'campaign'>): Masks {
  const rank = (name: string) =>
    createHash('sha256').update(`${campaign.campaign}\n${campaign.plan_frozen_at}\n${name}`).digest('hex');
  const byRank = (a: string, b: string) => (rank(a) < rank(b) ? -1 : 1);
  const codes = rows.products.map(({ product }) => product).sort(byRank);
  const products = new Map(codes.map((code, at) => [code, `Product ${letters(at)}`]));
  const samples = codes.flatMap((code) =>
    rows.samples
      .filter(({ product }) => product === code)
      .map(({ sample }) => sample)
      .sort(byRank)
      .map((sample, at) => [sample, `${products.get(code)}, sample ${at + 1}`] as const),
  );
  return { products, samples: new Map(samples), tells: tellsOf(rows) };
}

/** 0 is A, 25 is Z, 26 is AA. */
function letters(at: number): string {
  const rest = Math.floor(at / 26);
  return `${rest === 0 ? '' : letters(rest - 1)}${String.fromCharCode(65 + (at % 26))}`;
}

/** A name of one character stands in nearly every text, so it tells nothing. */
function tellsOf({ products, samples }: Named): Masks['tells'] {
  const names = [
    ...products.flatMap(({ product, supplier }) => [product, supplier]),
    ...samples.map((row) => row.sample),
  ]
    .filter((name) => name.length > 1)
    .map((name) => name.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&'));
  if (names.length === 0) return () => false;
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${names.join('|')})(?![\\p{L}\\p{N}])`, 'iu');
  return (text) => pattern.test(text);
}

/** The rows of a campaign as they may be shown: while it is blind, without anything that names product, supplier, sample or price. */
export function maskedRows(rows: CampaignRows): CampaignRows {
  const campaign = rows.campaign[0];
  if (!campaign || !isBlind(campaign)) return rows;
  const masks = masksOf(rows, campaign);
  const masked = <T extends TableName>(kind: T) => rows[kind].map((row) => maskedRow(kind, row, masks));
  return {
    ...rows,
    products: masked('products').sort((a, b) => a.product.localeCompare(b.product)),
    samples: masked('samples').sort((a, b) => a.sample.localeCompare(b.sample)),
    custody: masked('custody'),
    pieces: masked('pieces'),
    pulls: masked('pulls'),
    breaks: masked('breaks'),
    zinc: masked('zinc'),
    photographs: masked('photographs').filter(({ file }) => !masks.tells(file)),
  };
}

/** In place of a cell that names somebody, and in place of a text that does so. */
export const hidden = 'not named while the campaign is blind';
export const hiddenText = 'not shown while the campaign is blind';

/** Cells that would tell whatever is in them. */
const emptied: Partial<Record<TableName, readonly string[]>> = {
  products: ['description', 'price_per_metre', 'currency'],
  samples: ['bought_from', 'batch_mark', 'condition'],
};
/** Cells that anybody writes into as they like: hidden where they name somebody. */
const freeText: readonly string[] = ['place', 'note', 'caption', 'invalid_reason'];

/** A row of any table as it may be shown while its campaign is blind. */
export function maskedRow<T extends TableName>(kind: T, row: Row<T>, masks: Masks): Row<T> {
  const cells: Readonly<Record<string, CellValue>> = row;
  const masked = Object.entries(cells).map(([column, value]) => [column, maskedCell({ kind, column, value }, masks)]);
  // The same columns; a text stays a text, and only cells that may be empty are emptied.
  return Object.fromEntries(masked) as Row<T>;
}

interface Cell {
  readonly kind: TableName;
  readonly column: string;
  readonly value: CellValue;
}

function maskedCell({ kind, column, value }: Cell, masks: Masks): CellValue {
  if (emptied[kind]?.includes(column)) return null;
  if (typeof value !== 'string') return value;
  if (column === 'supplier') return hidden;
  const names = namesOf(kind, column);
  if (names !== null) return masks[names].get(value) ?? hidden;
  return freeText.includes(column) && masks.tells(value) ? hiddenText : value;
}

/** Whose names a column holds, where it holds masked ones. */
export function namesOf(kind: TableName, column: string): 'products' | 'samples' | null {
  const fields: Readonly<Record<string, { readonly key?: boolean; readonly references?: string }>> =
    tables[kind].fields;
  const table = fields[column]?.key && fields[column].references === undefined ? kind : fields[column]?.references;
  return table === 'products' || table === 'samples' ? table : null;
}
