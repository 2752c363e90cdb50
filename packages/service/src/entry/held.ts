import {
  type FileHeld,
  type FilesHeld,
  type HeldFile,
  type Row,
  type RowHeld,
  type RowsHeld,
  rowId,
  type TableName,
  tables,
} from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { attachments, benchBook, heldRows, readBlob, writeBlob } from '@provinghouse/store';
import { type Masks, maskedRow } from '../blind/blind.ts';
import { masksNow } from '../blind/masks-now.ts';
import type { Effects } from '../effects.ts';
import { campaignOf, knownCampaign } from './book.ts';

export interface PageAsked {
  readonly after: number;
  readonly limit: number;
}

/**
 * A page of the rows of one table of a book, as they may be shown: while a campaign is blind, without names, and without the photographs of
 * samples from before the freezing.
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
  if (!campaign) return { rows, next };
  const masks = await masksNow(campaign, store);
  if (masks === null) return { rows, next };
  const shown = rows
    .filter((row) => kind !== 'photographs' || isShown(row as RowHeld<'photographs'>, campaign, masks))
    .map((row) => {
      const body = maskedRow(kind, row.body, masks);
      return { ...row, id: rowId(tables[kind], body), body };
    });
  // The order of entry would tell which product is which.
  const isNamed = kind === 'products' || kind === 'samples';
  return { rows: isNamed ? shown.sort((a, b) => a.id.localeCompare(b.id)) : shown, next };
}

/** A sample is photographed as it was received, with the tag or mark of whoever sold it; and the name of a file cannot be masked. */
function isShown({ at, body }: RowHeld<'photographs'>, { plan_frozen_at }: Row<'campaign'>, masks: Masks): boolean {
  if (masks.tells(body.file)) return false;
  return body.sample === null || Date.parse(at) >= Date.parse(plan_frozen_at ?? '');
}

/** Keeps the bytes of a file until a row names it; the same bytes are kept once. */
export function holdFile(bytes: Uint8Array, { store }: Pick<Effects, 'store'>): Promise<HeldFile> {
  return writeBlob(store, bytes);
}

export interface FilesAsked {
  /** Only files whose path begins so; all where it is empty. */
  readonly under: string;
  /** Path after which the page begins; empty for the first. */
  readonly after: string;
  readonly limit: number;
}

/**
 * A page of the files of a book, by path; while a campaign is blind, without those whose path names somebody.
 * @throws InputError `campaign/unknown`
 */
export async function filesHeld(
  book: string,
  { under, after, limit }: FilesAsked,
  { store }: Pick<Effects, 'store'>,
): Promise<FilesHeld> {
  const masks = book === benchBook ? null : await masksNow(await knownCampaign(store, book), store);
  const rest = (await attachments(store, book))
    .filter(({ path }) => path.startsWith(under) && path > after && masks?.tells(path) !== true)
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  const files = rest.slice(0, limit);
  return { files, next: rest.length > limit ? (files.at(-1)?.path ?? null) : null };
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
