import { type CellValue, rowId, type TableName, tables } from '@provinghouse/contract';
import { canonicalJson } from './canonical.ts';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';
import { appendEntries, chain, type LedgerNote, ledgerHead } from './ledger.ts';
import { refuseBadRow, refuseUnknownNames } from './row-check.ts';

/** Which revision of which row is meant, and who acts on it why. */
export interface RevisionOf {
  readonly campaign: string;
  readonly kind: TableName;
  readonly id: string;
  /** The revision the change was made from; another one in the record means somebody was faster. */
  readonly revision: number;
  readonly who: string;
  readonly why: string;
  readonly at: string;
}

export interface Revision extends RevisionOf {
  /** The whole row as it should stand. Its key may not change. */
  readonly body: Readonly<Record<string, CellValue>>;
  /** What the ledger calls it; `correct` unless said otherwise. */
  readonly action?: string;
}

/** A change that was kept. */
export interface Revised {
  readonly revision: number;
  readonly ledgerSeq: number;
}

/**
 * Corrects one row. The value before stays in the ledger with who, when and why.
 * @throws StoreError `store/reason-missing`, `store/bad-row`, `store/unknown-record`, `store/revision-conflict`
 */
export async function reviseRecord(db: Database, input: Revision): Promise<Revised> {
  const { campaign, kind, id, body } = input;
  refuseWithoutReason(input);
  refuseBadRow({ kind, id, body }, rowId(tables[kind], body) === id ? [] : ['the key may not change']);
  return db.transaction().execute(async (transaction) => {
    const before = await heldBody(transaction, input);
    await refuseUnknownNames(transaction, campaign, { kind, id, body });
    const after = canonicalJson(body);
    const ledgerSeq = await tell(transaction, input, { action: input.action ?? 'correct', before, after });
    const revision = input.revision + 1;
    await transaction
      .updateTable('record')
      .set({ body: after, revision, ledger_seq: ledgerSeq })
      .where('campaign', '=', campaign)
      .where('kind', '=', kind)
      .where('id', '=', id)
      .execute();
    return { revision, ledgerSeq };
  });
}

export function refuseWithoutReason({ kind, id, why }: RevisionOf): void {
  if (why.trim() !== '') return;
  throw new StoreError('store/reason-missing', `${kind} ${id}: a correction needs its reason`, {
    context: { kind, id },
  });
}

/** The row as kept, if it still is the revision meant. @throws StoreError `store/unknown-record`, `store/revision-conflict` */
export async function heldBody(db: Database, meant: RevisionOf): Promise<string> {
  const { campaign, kind, id } = meant;
  const held = await db
    .selectFrom('record')
    .select(['revision', 'body'])
    .where('campaign', '=', campaign)
    .where('kind', '=', kind)
    .where('id', '=', id)
    .executeTakeFirst();
  if (!held)
    throw new StoreError('store/unknown-record', `campaign ${campaign} holds no ${kind} "${id}"`, {
      context: { campaign, kind, id },
    });
  if (held.revision !== meant.revision) throw conflict(meant, held.revision);
  return held.body;
}

/** Writes one entry about one row; gives its place in the ledger. Call it inside a transaction. */
export async function tell(
  db: Database,
  { campaign, kind, id, at, who, why }: RevisionOf,
  change: Pick<LedgerNote, 'action' | 'before' | 'after'>,
): Promise<number> {
  const note = { at, who, why: why.trim(), kind, record: id, ...change };
  const entries = chain(campaign, await ledgerHead(db, campaign), [note]);
  await appendEntries(db, entries);
  return entries[0]?.seq ?? 0;
}

function conflict({ campaign, kind, id, revision }: RevisionOf, held: number): StoreError {
  const message = `${kind} ${id} has been corrected meanwhile (revision ${held}, not ${revision}); look at it again`;
  return new StoreError('store/revision-conflict', message, { context: { campaign, kind, id, revision, held } });
}
