import type { Row, TableName } from '@provinghouse/contract';
import { type Database, heldRow, heldRows } from '@provinghouse/store';

/** The campaign row of a book; null for the book of the bench, which has none, and for an unknown campaign. */
export async function campaignOf(store: Database, campaign: string): Promise<Row<'campaign'> | null> {
  return (await heldRow(store, { campaign, kind: 'campaign', id: campaign }))?.body ?? null;
}

/** All rows of one table of a book, in their order. */
export async function rowsOf<T extends TableName>(store: Database, campaign: string, kind: T): Promise<Row<T>[]> {
  const { rows } = await heldRows(store, { campaign, kind, after: -1, limit: Number.MAX_SAFE_INTEGER - 1 });
  return rows.map(({ body }) => body);
}
