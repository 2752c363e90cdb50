import { type CellValue, rowId, type TableName, tables } from '@provinghouse/contract';
import { canonicalJson } from './canonical.ts';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';
import { appendEntries, chain, ledgerHead } from './ledger.ts';
import { rowFaultsOf } from './row-check.ts';

export interface Revision {
  readonly campaign: string;
  readonly kind: TableName;
  readonly id: string;
  /** The revision the correction was made from; another one in the record means somebody was faster. */
  readonly revision: number;
  /** The whole row as it should stand. Its key may not change. */
  readonly body: Readonly<Record<string, CellValue>>;
  readonly who: string;
  readonly why: string;
  readonly at: string;
}

/**
 * Corrects one row. The value before stays in the ledger with who, when and why.
 * @returns the new revision
 * @throws StoreError `store/reason-missing`, `store/bad-row`, `store/unknown-record`, `store/revision-conflict`
 */
export async function reviseRecord(db: Database, input: Revision): Promise<{ revision: number; ledgerSeq: number }> {
  const { campaign, kind, id } = input;
  const why = input.why.trim();
  if (why === '')
    throw new StoreError('store/reason-missing', `${kind} ${id}: a correction needs its reason`, {
      context: { kind, id },
    });
  refuseBadRow(input);
  return db.transaction().execute(async (transaction) => {
    const held = await transaction
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
    if (held.revision !== input.revision) throw conflict(input, held.revision);
    const after = canonicalJson(input.body);
    const note = { at: input.at, who: input.who, action: 'correct', kind, record: id, why, before: held.body, after };
    const entries = chain(campaign, await ledgerHead(transaction, campaign), [note]);
    await appendEntries(transaction, entries);
    const next = { revision: held.revision + 1, ledgerSeq: entries[0]?.seq ?? 0 };
    await transaction
      .updateTable('record')
      .set({ body: after, revision: next.revision, ledger_seq: next.ledgerSeq })
      .where('campaign', '=', campaign)
      .where('kind', '=', kind)
      .where('id', '=', id)
      .execute();
    return next;
  });
}

function conflict({ campaign, kind, id, revision }: Revision, held: number): StoreError {
  const message = `${kind} ${id} has been corrected meanwhile (revision ${held}, not ${revision}); look at it again`;
  return new StoreError('store/revision-conflict', message, { context: { campaign, kind, id, revision, held } });
}

function refuseBadRow({ kind, id, body }: Revision): void {
  const faults = rowFaultsOf(kind, body);
  if (rowId(tables[kind], body) !== id) faults.push('the key may not change');
  if (faults.length > 0)
    throw new StoreError('store/bad-row', `${kind} ${id}: ${faults.join('; ')}`, { context: { kind, id, faults } });
}
