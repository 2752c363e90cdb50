import { type Table, type TableName, tables } from '@provinghouse/contract';
import { readBody } from './campaign.ts';
import type { Database } from './database.ts';
import { StoreError } from './errors.ts';
import { heldBody, type RevisionOf, refuseWithoutReason, tell } from './revise.ts';

/** What a ledger entry says a row is after it was withdrawn. */
export const withdrawn = 'null';

/**
 * Takes one row out of the record. It stays in the ledger, with who, when and why, and may be written anew.
 * @returns the place of its entry in the ledger
 * @throws StoreError `store/reason-missing`, `store/unknown-record`, `store/revision-conflict`, `store/still-named` where another row names it
 */
export async function withdrawRecord(db: Database, input: RevisionOf): Promise<{ readonly ledgerSeq: number }> {
  refuseWithoutReason(input);
  return db.transaction().execute(async (transaction) => {
    const before = await heldBody(transaction, input);
    await refuseStillNamed(transaction, input);
    await transaction
      .deleteFrom('record')
      .where('campaign', '=', input.campaign)
      .where('kind', '=', input.kind)
      .where('id', '=', input.id)
      .execute();
    return { ledgerSeq: await tell(transaction, input, { action: 'withdraw', before, after: withdrawn }) };
  });
}

async function refuseStillNamed(db: Database, { campaign, kind, id }: RevisionOf): Promise<void> {
  if (kind === 'campaign')
    throw new StoreError('store/still-named', 'a campaign keeps its one row', { context: { campaign } });
  for (const name of Object.keys(tables) as TableName[]) {
    const fields: Table['fields'] = tables[name].fields;
    const columns = Object.entries(fields).flatMap(([column, { references }]) => (references === kind ? [column] : []));
    if (columns.length === 0) continue;
    const rows = await db
      .selectFrom('record')
      .select(['id', 'body'])
      .where('campaign', '=', campaign)
      .where('kind', '=', name)
      .execute();
    const naming = rows.find((row) => {
      const cells: Readonly<Record<string, unknown>> = readBody(name, row.body);
      return columns.some((column) => cells[column] === id);
    });
    if (!naming) continue;
    throw new StoreError('store/still-named', `${kind} ${id} is named by ${name} ${naming.id}; withdraw that first`, {
      context: { campaign, kind, id, by: naming.id },
    });
  }
}
