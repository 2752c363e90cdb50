import { createHash } from 'node:crypto';
import { type CampaignRows, isBlind, type Row } from '@provinghouse/contract';

/** What stands in place of the codes of products and samples while a campaign is blind. */
export interface Masks {
  readonly products: ReadonlyMap<string, string>;
  readonly samples: ReadonlyMap<string, string>;
}

/**
 * Neutral names for products and samples. Their order follows a hash and not the order of entry, which somebody may remember; it stays
 * the same as long as the campaign is blind.
 */
export function masksOf(rows: Pick<CampaignRows, 'products' | 'samples'>, campaign: Row<'campaign'>): Masks {
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
  return { products, samples: new Map(samples) };
}

/** 0 is A, 25 is Z, 26 is AA. */
function letters(at: number): string {
  const rest = Math.floor(at / 26);
  return `${rest === 0 ? '' : letters(rest - 1)}${String.fromCharCode(65 + (at % 26))}`;
}

/** The rows of a campaign as they may be shown: while it is blind, without anything that names product, supplier, sample or price. */
export function maskedRows(rows: CampaignRows): CampaignRows {
  const campaign = rows.campaign[0];
  if (!campaign || !isBlind(campaign)) return rows;
  const masks = masksOf(rows, campaign);
  const byName =
    <R>(name: (row: R) => string) =>
    (a: R, b: R) =>
      name(a).localeCompare(name(b));
  return {
    ...rows,
    products: rows.products.map((row) => maskedProduct(row, masks)).sort(byName((row) => row.product)),
    samples: rows.samples.map((row) => maskedSample(row, masks)).sort(byName((row) => row.sample)),
    custody: rows.custody.map((row) => ({ ...row, sample: nameIn(masks.samples, row.sample) })),
    pieces: rows.pieces.map((row) => maskedPiece(row, masks)),
    photographs: rows.photographs.map((row) => maskedPhotograph(row, masks)),
  };
}

const hidden = 'not named while the campaign is blind';

function nameIn(masks: ReadonlyMap<string, string>, code: string): string {
  return masks.get(code) ?? hidden;
}

export function maskedProduct(row: Row<'products'>, masks: Masks): Row<'products'> {
  const unknown = { description: null, price_per_metre: null, currency: null };
  return { ...row, product: nameIn(masks.products, row.product), supplier: hidden, ...unknown };
}

export function maskedSample(row: Row<'samples'>, masks: Masks): Row<'samples'> {
  const names = { sample: nameIn(masks.samples, row.sample), product: nameIn(masks.products, row.product) };
  return { ...row, ...names, bought_from: null, batch_mark: null, condition: null };
}

export function maskedPiece(row: Row<'pieces'>, masks: Masks): Row<'pieces'> {
  return { ...row, sample: nameIn(masks.samples, row.sample) };
}

export function maskedPhotograph(row: Row<'photographs'>, masks: Masks): Row<'photographs'> {
  return row.sample === null ? row : { ...row, sample: nameIn(masks.samples, row.sample) };
}
