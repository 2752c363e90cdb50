import { canonicalJson, sha256 } from './canonical.ts';
import type { CampaignTable, Database, LedgerTable } from './database.ts';
import { StoreError } from './errors.ts';

export type LedgerEntry = Readonly<LedgerTable>;

/** What happened to one thing: who, when, why, and its canonical JSON before and after. */
export type LedgerNote = Pick<LedgerEntry, 'at' | 'who' | 'action' | 'kind' | 'record' | 'why' | 'before' | 'after'>;

export type LedgerHead = Pick<CampaignTable, 'head_seq' | 'head_hash'>;

/** The head of a ledger without entries: the hash the first entry takes for its previous one. */
export const emptyHead: LedgerHead = { head_seq: 0, head_hash: '0'.repeat(64) };

/** Rows of the largest multi-row insert; keeps the number of bound values far below SQLite's limit of 32 766. */
export const batchSize = 250;

/** The hash of an entry: SHA-256 over the canonical JSON of everything else in it, the previous hash included. */
export function entryHash(entry: Omit<LedgerEntry, 'hash'>): string {
  const { campaign, seq, at, who, action, kind, record, why, before, after, previous_hash } = entry;
  return sha256(canonicalJson({ campaign, seq, at, who, action, kind, record, why, before, after, previous_hash }));
}

/** Chains notes to a head; pure, nothing is written. */
export function chain(campaign: string, head: LedgerHead, notes: readonly LedgerNote[]): LedgerEntry[] {
  let { head_seq: seq, head_hash: previous_hash } = head;
  return notes.map((note) => {
    seq += 1;
    const entry = { ...keepable(note), campaign, seq, previous_hash };
    previous_hash = entryHash(entry);
    return { ...entry, hash: previous_hash };
  });
}

/** UTF-8 has no half of a surrogate pair; what is hashed must be what is kept. */
function keepable(note: LedgerNote): LedgerNote {
  const { who, why, record } = note;
  return { ...note, who: who.toWellFormed(), why: why.toWellFormed(), record: record.toWellFormed() };
}

/** Appends entries and moves the campaign's head to the last of them; call it inside a transaction. */
export async function appendEntries(db: Database, entries: readonly LedgerEntry[]): Promise<void> {
  for (let i = 0; i < entries.length; i += batchSize)
    await db
      .insertInto('ledger')
      .values(entries.slice(i, i + batchSize))
      .execute();
  const last = entries.at(-1);
  if (!last) return;
  await db
    .updateTable('campaign')
    .set({ head_seq: last.seq, head_hash: last.hash })
    .where('code', '=', last.campaign)
    .execute();
}

/** The head of a campaign's ledger. @throws StoreError `store/unknown-campaign` */
export async function ledgerHead(db: Database, campaign: string): Promise<LedgerHead> {
  const head = await db
    .selectFrom('campaign')
    .select(['head_seq', 'head_hash'])
    .where('code', '=', campaign)
    .executeTakeFirst();
  if (!head) throw unknownCampaign(campaign);
  return { ...head };
}

export function unknownCampaign(campaign: string): StoreError {
  return new StoreError('store/unknown-campaign', `the record holds no campaign "${campaign}"`, {
    context: { campaign },
  });
}

export interface LedgerPage {
  /** Only entries after this one; 0 for the beginning. */
  readonly after?: number;
  readonly limit?: number;
}

/** Entries of a campaign's ledger, oldest first. */
export async function ledgerEntries(db: Database, campaign: string, page: LedgerPage = {}): Promise<LedgerEntry[]> {
  const { after = 0, limit = 1000 } = page;
  const rows = await db
    .selectFrom('ledger')
    .selectAll()
    .where('campaign', '=', campaign)
    .where('seq', '>', after)
    .orderBy('seq')
    .limit(limit)
    .execute();
  return rows.map((row) => ({ ...row }));
}
