import type { Row, TableName } from '@provinghouse/contract';
import { readBody } from './campaign.ts';
import type { Database } from './database.ts';

/** A row as kept, with the revision a change must name. */
export interface HeldRow<T extends TableName = TableName> {
  readonly id: string;
  readonly revision: number;
  readonly at: string;
  readonly who: string;
  readonly body: Row<T>;
}

export interface RowsAsked<T extends TableName> {
  readonly campaign: string;
  readonly kind: T;
  /** Only rows placed after this one; -1 for the beginning. */
  readonly after: number;
  readonly limit: number;
}

export interface RowsPage<T extends TableName = TableName> {
  readonly rows: readonly HeldRow<T>[];
  /** Where the next page begins; null at the end. */
  readonly next: number | null;
}

/** Rows of one table of a campaign in their order, a page of them, each with who wrote it last and when. */
export async function heldRows<T extends TableName>(db: Database, asked: RowsAsked<T>): Promise<RowsPage<T>> {
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
export async function heldRow<T extends TableName>(db: Database, asked: RowAsked<T>): Promise<HeldRow<T> | null> {
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
