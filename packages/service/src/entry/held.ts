import {
  type FileHeld,
  type HeldFile,
  isBlind,
  type Row,
  type RowHeld,
  type RowsHeld,
  type TableName,
} from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { attachments, benchBook, heldRows, readBlob, writeBlob } from '@provinghouse/store';
import { type Masks, maskedPhotograph, maskedPiece, maskedProduct, maskedSample, masksOf } from '../blind/blind.ts';
import type { Effects } from '../effects.ts';
import { campaignOf, rowsOf } from './book.ts';

export interface PageAsked {
  readonly after: number;
  readonly limit: number;
}

/**
 * A page of the rows of one table of a book, as they may be shown: while a campaign is blind, without names.
 * @throws InputError `campaign/unknown`
 */
export async function rowsHeld(
  book: string,
  kind: TableName,
  page: PageAsked,
  { store }: Pick<Effects, 'store'>,
): Promise<RowsHeld> {
  const campaign = await campaignOf(store, book);
  if (!campaign && book !== benchBook)
    throw new InputError('campaign/unknown', `The record holds no campaign "${book}".`, { campaign: book });
  const { rows, next } = await heldRows(store, { campaign: book, kind, ...page });
  if (!campaign || !isBlind(campaign)) return { rows, next };
  const masks = masksOf(
    { products: await rowsOf(store, book, 'products'), samples: await rowsOf(store, book, 'samples') },
    campaign,
  );
  const shown = rows.map((row) => masked(kind, row, masks));
  // The order of entry would tell which product is which.
  const isNamed = kind === 'products' || kind === 'samples';
  return { rows: isNamed ? shown.sort((a, b) => a.id.localeCompare(b.id)) : shown, next };
}

function masked(kind: TableName, row: RowHeld, masks: Masks): RowHeld {
  // The body is a row of the table asked for.
  switch (kind) {
    case 'products': {
      const body = maskedProduct(row.body as Row<'products'>, masks);
      return { ...row, id: body.product, body };
    }
    case 'samples': {
      const body = maskedSample(row.body as Row<'samples'>, masks);
      return { ...row, id: body.sample, body };
    }
    case 'custody': {
      const cells = row.body as Row<'custody'>;
      const body = { ...cells, sample: masks.samples.get(cells.sample) ?? '' };
      return { ...row, id: `${body.sample}/${body.move}`, body };
    }
    case 'pieces':
      return { ...row, body: maskedPiece(row.body as Row<'pieces'>, masks) };
    case 'photographs':
      return { ...row, body: maskedPhotograph(row.body as Row<'photographs'>, masks) };
    default:
      return row;
  }
}

/** Keeps the bytes of a file until a row names it; the same bytes are kept once. */
export function holdFile(bytes: Uint8Array, { store }: Pick<Effects, 'store'>): Promise<HeldFile> {
  return writeBlob(store, bytes);
}

/** The files of the book of the bench, by path: its own specifications. */
export function filesOfBench({ store }: Pick<Effects, 'store'>): Promise<readonly FileHeld[]> {
  return attachments(store, benchBook);
}

export interface FileRead extends FileHeld {
  readonly bytes: Uint8Array;
}

/** A file of a campaign. @throws InputError `entry/file-unknown` */
export async function readFileOf(book: string, path: string, { store }: Pick<Effects, 'store'>): Promise<FileRead> {
  const file = (await attachments(store, book)).find((one) => one.path === path);
  if (!file) throw new InputError('entry/file-unknown', `Campaign ${book} holds no file ${path}.`, { path });
  return { ...file, bytes: await readBlob(store, file.sha256) };
}
