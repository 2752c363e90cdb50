import type { LedgerChange, LedgerLine, LedgerPage, TableName } from '@provinghouse/contract';
import { benchBook, type LedgerEntry, ledgerEntries } from '@provinghouse/store';
import type { Masks } from '../blind/blind.ts';
import { masksNow } from '../blind/masks-now.ts';
import { idShown, inId } from '../blind/meant.ts';
import type { Effects } from '../effects.ts';
import { campaignOf } from '../entry/book.ts';
import { isBook } from './ledger-state.ts';

export interface LedgerAsked {
  /** Only entries before this one; null for the newest. */
  readonly before: number | null;
  readonly limit: number;
  /** Words that must all stand in an entry, whatever their case; empty for all entries. */
  readonly search: string;
  /** Kinds of record; empty for all. */
  readonly kinds: readonly string[];
}

/**
 * Entries of a book's ledger with the cells they changed, the newest first. While a campaign is blind, entries about products, samples and
 * pieces show no cells, and names of products and samples stand masked. Null for an unknown campaign.
 */
export async function ledgerPage(
  book: string,
  { before, limit, search, kinds }: LedgerAsked,
  { store }: Pick<Effects, 'store'>,
): Promise<LedgerPage | null> {
  // Nothing was ever entered at a bench whose book is not open.
  if (!(await isBook(book, store))) return book === benchBook ? { entries: [], found: 0, next: null } : null;
  const entries = await ledgerEntries(store, book, { limit: Number.MAX_SAFE_INTEGER });
  const masks = await masksNow(await campaignOf(store, book), store);
  const names = masks === null ? [] : namesEver(entries);
  const lines = entries.map((entry) => (masks === null ? lineOf(entry) : maskedLine(lineOf(entry), masks, names)));
  const words = search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const found = lines
    .filter((line) => (kinds.length === 0 || kinds.includes(line.kind)) && holdsAll(line, words))
    .reverse();
  const left = before === null ? found : found.filter(({ seq }) => seq < before);
  const page = left.slice(0, limit);
  return { entries: page, found: found.length, next: left.length > limit ? (page.at(-1)?.seq ?? null) : null };
}

function holdsAll(line: LedgerLine, words: readonly string[]): boolean {
  if (words.length === 0) return true;
  const { seq, at, who, action, kind, record, why, changes } = line;
  const cells = (changes ?? []).flatMap(({ cell, before, after }) => [cell, before ?? '', after ?? '']);
  const text = [String(seq), at, who, action, kind, record, why, ...cells].join('\n').toLowerCase();
  return words.every((word) => text.includes(word));
}

function lineOf({ seq, at, who, action, kind, record, why, hash, before, after }: LedgerEntry): LedgerLine {
  return { seq, at, who, action, kind, record, why, hash, changes: changesBetween(cellsOf(before), cellsOf(after)) };
}

type Cells = Readonly<Record<string, unknown>>;

/** Every body in the ledger is an object of cells, or null where there is none. */
function cellsOf(json: string | null): Cells {
  const body: unknown = json === null ? null : JSON.parse(json);
  return typeof body === 'object' && body !== null ? Object.fromEntries(Object.entries(body)) : {};
}

function changesBetween(before: Cells, after: Cells): LedgerChange[] {
  const cells = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return cells.flatMap((cell) => {
    const change = { cell, before: words(before[cell]), after: words(after[cell]) };
    return change.before === change.after ? [] : [change];
  });
}

function words(value: unknown): string | null {
  return value === null || value === undefined ? null : String(value);
}

const hiddenKinds = new Set(['products', 'samples', 'custody', 'pieces', 'photographs', 'attachment']);
const hidden = 'hidden while the campaign is blind';

/** Every name that a product, a supplier or a sample ever had, also as it stands in an id and in the name of a file. */
function namesEver(entries: readonly LedgerEntry[]): string[] {
  const cells = entries
    .filter(({ kind }) => kind === 'products' || kind === 'samples')
    .flatMap(({ before, after }) => [cellsOf(before), cellsOf(after)])
    .flatMap(({ product, supplier, sample }) => [product, supplier, sample])
    .filter((name) => typeof name === 'string');
  const inFile = (name: string) => name.replaceAll(/[^\w.-]+/g, '-');
  const names = cells.flatMap((name) => [name, inId(name), inFile(name)]);
  return [...new Set(names.map((name) => name.toLowerCase()))].filter((name) => name !== '-');
}

function maskedLine(line: LedgerLine, masks: Masks, names: readonly string[]): LedgerLine {
  const tells = (text: string) => names.some((name) => text.toLowerCase().includes(name));
  const changes = line.changes ?? [];
  const isTold = changes.some(({ before, after }) => tells(before ?? '') || tells(after ?? ''));
  // The kinds of entries are tables, but for the files; those have no masks.
  const record = idShown(line.kind as TableName, line.record, masks);
  return {
    ...line,
    record: record === line.record && tells(record) ? hidden : record,
    why: tells(line.why) ? hidden : line.why,
    changes: hiddenKinds.has(line.kind) || isTold ? null : line.changes,
  };
}
