import {
  type CampaignRows,
  type CellValue,
  type Row,
  type Table,
  type TableName,
  tables,
} from '@provinghouse/contract';
import { benchBook } from './bench-book.ts';
import { contentHash } from './content.ts';
import type { Database } from './database.ts';
import { unknownCampaign } from './ledger.ts';

/** Codes of all campaigns, sorted. */
export async function campaignCodes(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('campaign').select('code').where('code', '!=', benchBook).orderBy('code').execute();
  return rows.map(({ code }) => code);
}

/**
 * All rows of a campaign as they stand now, each table in the order it was brought in.
 * @throws StoreError `store/unknown-campaign`
 */
export async function campaignRows(db: Database, campaign: string): Promise<CampaignRows> {
  const records = await db
    .selectFrom('record')
    .select(['kind', 'body'])
    .where('campaign', '=', campaign)
    .orderBy('kind')
    .orderBy('position')
    .execute();
  if (records.length === 0) throw unknownCampaign(campaign);
  const rows = Object.fromEntries(Object.keys(tables).map((name) => [name, [] as Row<TableName>[]]));
  for (const { kind, body } of records) rows[kind]?.push(readBody(kind as TableName, body));
  // One list of its own rows for each table, by the loop above.
  return rows as unknown as CampaignRows;
}

/** A row in the order of its table's columns; a column added since it was written reads as not recorded. */
export function readBody<T extends TableName>(kind: T, body: string): Row<T> {
  const cells = JSON.parse(body) as Record<string, CellValue>;
  const { fields }: Table = tables[kind];
  // Only checked rows are ever written.
  return Object.fromEntries(Object.keys(fields).map((name) => [name, cells[name] ?? null])) as Row<T>;
}

export interface Attachment {
  readonly path: string;
  readonly sha256: string;
  readonly size: number;
  readonly media: string;
}

/** The files of a campaign (traces, photographs, own specifications, others), by path. */
export async function attachments(db: Database, campaign: string): Promise<Attachment[]> {
  const rows = await db
    .selectFrom('attachment')
    .innerJoin('blob', 'blob.sha256', 'attachment.sha256')
    .select(['attachment.path', 'attachment.sha256', 'blob.size', 'attachment.media'])
    .where('attachment.campaign', '=', campaign)
    .orderBy('attachment.path')
    .execute();
  return rows.map((row) => ({ ...row }));
}

export interface CampaignContent {
  /** Content hash as first brought in. */
  readonly broughtIn: string;
  /** Content hash as it stands, corrections included. */
  readonly now: string;
}

/** The content hashes of a campaign (see {@link contentHash}), or null where the record does not hold it. */
export async function campaignContent(db: Database, campaign: string): Promise<CampaignContent | null> {
  const held = await db.selectFrom('campaign').select('content_sha256').where('code', '=', campaign).executeTakeFirst();
  if (!held) return null;
  const files = (await attachments(db, campaign)).map(({ path, sha256 }) => [path, sha256]);
  const now = contentHash(await campaignRows(db, campaign), Object.fromEntries(files));
  return { broughtIn: held.content_sha256, now };
}
