import {
  type CellValue,
  type EntryRequest,
  type Kept,
  type Row,
  rowId,
  type TableName,
  tables,
} from '@provinghouse/contract';
import {
  addRecords,
  benchBook,
  canonicalJson,
  heldRow,
  heldRows,
  openBenchBook,
  type RecordsToAdd,
} from '@provinghouse/store';
import type { Masks } from '../blind/blind.ts';
import { masksNow } from '../blind/masks-now.ts';
import { namesMeant, rowMeant } from '../blind/meant.ts';
import { namingNobody } from '../blind/naming-nobody.ts';
import type { Effects } from '../effects.ts';
import { campaignOf, rowsOf } from './book.ts';
import { certificateRule } from './certificate-rule.ts';
import { codeRule, planRule } from './plan-rule.ts';

type AddedTable = Exclude<TableName, 'campaign'>;

interface At {
  readonly book: string;
  readonly campaign: Row<'campaign'> | null;
  readonly masks: Masks | null;
}

/**
 * Keeps new rows and files in a book: all of them or none, each with its entry in the ledger. Rows that stand there already with the same
 * cells are passed over, so that a client which heard no answer may send again.
 * @throws InputError `entry/certificate-not-in-force`, `entry/plan-not-frozen`, `entry/plan-frozen`, `entry/blind`, `entry/code-tells`;
 * StoreError as `addRecords`
 */
export async function enterRows(book: string, request: EntryRequest, effects: Effects): Promise<Kept> {
  const { store, now } = effects;
  if (book === benchBook) await openBenchBook(store, now().toISOString());
  const campaign = await campaignOf(store, book);
  const masks = await masksNow(campaign, store);
  return namingNobody(masks, () => enter({ book, campaign, masks }, request, effects));
}

async function enter({ book, campaign, masks }: At, request: EntryRequest, effects: Effects): Promise<Kept> {
  const { store, now } = effects;
  const rows = await newRows({ book, campaign, masks }, request.rows, effects);
  if (campaign) {
    // Whether anything was pulled before matters to pulls alone, and most entries are readings.
    const isLater = (rows.pulls ?? []).length > 0 && (await hasPulls(book, effects));
    planRule(campaign, { ...request, rows }, isLater);
    await pieceRule(campaign, rows, effects);
  }
  const overridden = await certificateRule(book, { ...request, rows }, effects);
  const toAttach = await filesToAttach(book, request, effects);
  const files = new Map(toAttach.map(({ path, sha256 }) => [path, sha256]));
  const given = request.why?.trim() || 'entered';
  const why = overridden === null ? given : `${given}; ${overridden}`;
  const { ledgerSeq } = await addRecords(store, {
    campaign: book,
    rows,
    files,
    who: request.who,
    why,
    at: now().toISOString(),
  });
  return { ledgerSeq };
}

async function hasPulls(campaign: string, { store }: Effects): Promise<boolean> {
  return (await heldRows(store, { campaign, kind: 'pulls', after: -1, limit: 1 })).rows.length > 0;
}

async function pieceRule(campaign: Row<'campaign'>, rows: RecordsToAdd['rows'], { store }: Effects): Promise<void> {
  const codes = (rows.pieces ?? []).map(({ piece }) => piece);
  if (codes.length === 0) return;
  const products = [...(await rowsOf(store, campaign.campaign, 'products')), ...(rows.products ?? [])];
  const samples = [...(await rowsOf(store, campaign.campaign, 'samples')), ...(rows.samples ?? [])];
  const telling = [
    ...products.flatMap(({ product, supplier }) => [product, supplier]),
    ...samples.map(({ sample }) => sample),
  ];
  codeRule(campaign, codes, telling);
}

/** The rows as they were meant, without those that are kept already. */
async function newRows(
  { book, masks }: At,
  rows: EntryRequest['rows'],
  { store }: Effects,
): Promise<RecordsToAdd['rows']> {
  const left: Partial<Record<AddedTable, unknown[]>> = {};
  for (const kind of Object.keys(rows) as AddedTable[]) {
    const open: unknown[] = [];
    for (const row of rows[kind] ?? []) {
      // Every row is cells by name; the union of the types of all tables is wider than TypeScript follows.
      const sent = row as Readonly<Record<string, CellValue>>;
      const id = rowId(tables[kind], masks === null ? sent : namesMeant(kind, sent, masks));
      const held = await heldRow(store, { campaign: book, kind, id });
      const body = rowMeant({ kind, body: sent }, masks, held?.body ?? null);
      if (!held || canonicalJson({ ...held.body }) !== canonicalJson({ ...body })) open.push(body);
    }
    left[kind] = open;
  }
  // The same rows under the same names, some left out.
  return left as RecordsToAdd['rows'];
}

async function filesToAttach(
  book: string,
  { files = [] }: EntryRequest,
  { store }: Effects,
): Promise<readonly { readonly path: string; readonly sha256: string }[]> {
  if (files.length === 0) return files;
  const held = await store.selectFrom('attachment').select(['path', 'sha256']).where('campaign', '=', book).execute();
  return files.filter(({ path, sha256 }) => !held.some((one) => one.path === path && one.sha256 === sha256));
}
