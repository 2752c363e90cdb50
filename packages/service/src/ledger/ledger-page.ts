import type { LedgerChange, LedgerLine, LedgerPage, TableName } from '@provinghouse/contract';
import { benchBook, countEntries, type LedgerEntry, type NewestAsked, newestEntries } from '@provinghouse/store';
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
  const masks = await masksNow(await campaignOf(store, book), store);
  const names = masks === null ? [] : await namesEver(book, store);
  const shown = (entry: LedgerEntry) => (masks === null ? lineOf(entry) : maskedLine(lineOf(entry), masks, names));
  const asked = { campaign: book, kinds };
  const words = search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) {
    const left = await newestEntries(store, { ...asked, before, limit: limit + 1 });
    return pageOf(left.map(shown), limit, await countEntries(store, asked));
  }
  const left: LedgerLine[] = [];
  let found = 0;
  // The words stand in what is shown, so while names are hidden the store cannot say which entries hold them.
  const held = masks === null ? words : [];
  for await (const entry of fromNewest(store, { ...asked, words: held })) {
    const line = shown(entry);
    if (!holdsAll(line, words)) continue;
    found += 1;
    if (left.length <= limit && (before === null || line.seq < before)) left.push(line);
  }
  return pageOf(left, limit, found);
}

/** A page of lines, of which one more than the page takes tells that there are others. */
function pageOf(left: readonly LedgerLine[], limit: number, found: number): LedgerPage {
  const entries = left.slice(0, limit);
  return { entries, found, next: left.length > limit ? (entries.at(-1)?.seq ?? null) : null };
}

const entriesAtOnce = 1000;

async function* fromNewest(
  store: Effects['store'],
  asked: Pick<NewestAsked, 'campaign' | 'kinds' | 'words'>,
): AsyncIterable<LedgerEntry> {
  for (let before: number | null = null; ; ) {
    const entries = await newestEntries(store, { ...asked, before, limit: entriesAtOnce });
    yield* entries;
    const last = entries.at(-1);
    if (!last || entries.length < entriesAtOnce) return;
    before = last.seq;
  }
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
async function namesEver(book: string, store: Effects['store']): Promise<readonly string[]> {
  const named = { campaign: book, kinds: ['products', 'samples'], before: null, limit: Number.MAX_SAFE_INTEGER };
  const cells = (await newestEntries(store, named))
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
