import type { Row, TableName } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { type Database, heldRow, heldRows } from '@provinghouse/store';

/** The campaign row of a book; null for the book of the bench, which has none, and for an unknown campaign. */
export async function campaignOf(store: Database, campaign: string): Promise<Row<'campaign'> | null> {
  return (await heldRow(store, { campaign, kind: 'campaign', id: campaign }))?.body ?? null;
}

/** The campaign row of a campaign that the record holds. @throws InputError `campaign/unknown` */
export async function knownCampaign(store: Database, campaign: string): Promise<Row<'campaign'>> {
  const row = await campaignOf(store, campaign);
  if (row) return row;
  throw new InputError('campaign/unknown', `The record holds no campaign "${campaign}".`, { campaign });
}

/** All rows of one table of a book, in their order. */
export async function rowsOf<T extends TableName>(store: Database, campaign: string, kind: T): Promise<Row<T>[]> {
  const { rows } = await heldRows(store, { campaign, kind, after: -1, limit: Number.MAX_SAFE_INTEGER - 1 });
  return rows.map(({ body }) => body);
}
