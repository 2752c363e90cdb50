import type { RowHeld, RowsHeld, TableName } from '@provinghouse/contract';
import { readBody } from './campaign.ts';
import type { Database } from './database.ts';

export interface RowsAsked<T extends TableName> {
  readonly campaign: string;
  readonly kind: T;
  /** Only rows placed after this one; -1 for the beginning. */
  readonly after: number;
  readonly limit: number;
}

/** Rows of one table of a campaign in their order, a page of them, each with who wrote it last and when. */
export async function heldRows<T extends TableName>(db: Database, asked: RowsAsked<T>): Promise<RowsHeld<T>> {
  const { campaign, kind, after, limit } = asked;
  const found = await db
    .selectFrom('record')
    .innerJoin('ledger', (join) =>
      join.onRef('ledger.campaign', '=', 'record.campaign').onRef('ledger.seq', '=', 'record.ledger_seq'),
    )
    .select(['record.id', 'record.revision', 'record.position', 'record.body', 'ledger.at', 'ledger.who'])
    .where('record.campaign', '=', campaign)
    .where('record.kind', '=', kind)
    .where('record.position', '>', after)
    .orderBy('record.position')
    .limit(limit + 1)
    .execute();
  const page = found.slice(0, limit);
  const last = found.length > limit ? page.at(-1) : undefined;
  return {
    rows: page.map(({ id, revision, at, who, body }) => ({ id, revision, at, who, body: readBody(kind, body) })),
    next: last?.position ?? null,
  };
}

export interface RowAsked<T extends TableName> {
  readonly campaign: string;
  readonly kind: T;
  readonly id: string;
}

/** One row as kept, or null. */
export async function heldRow<T extends TableName>(db: Database, asked: RowAsked<T>): Promise<RowHeld<T> | null> {
  const { campaign, kind, id } = asked;
  const found = await db
    .selectFrom('record')
    .innerJoin('ledger', (join) =>
      join.onRef('ledger.campaign', '=', 'record.campaign').onRef('ledger.seq', '=', 'record.ledger_seq'),
    )
    .select(['record.revision', 'record.body', 'ledger.at', 'ledger.who'])
    .where('record.campaign', '=', campaign)
    .where('record.kind', '=', kind)
    .where('record.id', '=', id)
    .executeTakeFirst();
  if (!found) return null;
  return { id, revision: found.revision, at: found.at, who: found.who, body: readBody(kind, found.body) };
}
