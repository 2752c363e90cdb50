import { type Kysely, type Migration, sql } from 'kysely';

/** The record as first built: campaigns, their rows, the ledger, blobs and the files that point to them. */
export const record: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await createCampaign(db);
    await createRecord(db);
    await createLedger(db);
    await createBlob(db);
    await createAttachment(db);
  },
};

async function createCampaign(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('campaign')
    .addColumn('code', 'text', (column) => column.primaryKey().notNull())
    .addColumn('brought_in_at', 'text', (column) => column.notNull())
    .addColumn('content_sha256', 'text', (column) => column.notNull())
    .addColumn('head_seq', 'integer', (column) => column.notNull())
    .addColumn('head_hash', 'text', (column) => column.notNull())
    .execute();
}

async function createRecord(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('record')
    .addColumn('campaign', 'text', (column) => column.notNull().references('campaign.code'))
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('position', 'integer', (column) => column.notNull())
    .addColumn('revision', 'integer', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addColumn('ledger_seq', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('record_key', ['campaign', 'kind', 'id'])
    .execute();
}

async function createLedger(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('ledger')
    .addColumn('campaign', 'text', (column) => column.notNull().references('campaign.code'))
    .addColumn('seq', 'integer', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('who', 'text', (column) => column.notNull())
    .addColumn('action', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('record', 'text', (column) => column.notNull())
    .addColumn('why', 'text', (column) => column.notNull())
    .addColumn('before', 'text')
    .addColumn('after', 'text', (column) => column.notNull())
    .addColumn('previous_hash', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('ledger_key', ['campaign', 'seq'])
    .execute();
  await refuseChange(db, { table: 'ledger', words: 'the ledger is append-only' });
  await refuseReplacement(db, {
    table: 'ledger',
    same: 'campaign = new.campaign and seq = new.seq',
    words: 'the ledger is append-only',
  });
  await db.schema.createIndex('ledger_record').on('ledger').columns(['campaign', 'kind', 'record']).execute();
}

async function createBlob(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('blob')
    .addColumn('sha256', 'text', (column) => column.primaryKey().notNull())
    .addColumn('size', 'integer', (column) => column.notNull())
    .addColumn('bytes', 'blob', (column) => column.notNull())
    .execute();
  await refuseChange(db, { table: 'blob', words: 'a blob never changes' });
  await refuseReplacement(db, { table: 'blob', same: 'sha256 = new.sha256', words: 'a blob never changes' });
}

async function createAttachment(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('attachment')
    .addColumn('campaign', 'text', (column) => column.notNull().references('campaign.code'))
    .addColumn('path', 'text', (column) => column.notNull())
    .addColumn('sha256', 'text', (column) => column.notNull().references('blob.sha256'))
    .addColumn('media', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('attachment_key', ['campaign', 'path'])
    .execute();
}

interface Refusal {
  readonly table: string;
  readonly words: string;
}

async function refuseChange(db: Kysely<unknown>, { table, words }: Refusal): Promise<void> {
  for (const change of ['update', 'delete']) {
    await sql`create trigger ${sql.id(`${table}_no_${change}`)} before ${sql.raw(change)} on ${sql.table(table)}
      begin select raise(abort, ${sql.lit(words)}); end`.execute(db);
  }
}

/** INSERT OR REPLACE would take the old row away without a delete trigger, so it is stopped before. */
async function refuseReplacement(db: Kysely<unknown>, options: Refusal & { readonly same: string }): Promise<void> {
  const { table, same, words } = options;
  await sql`create trigger ${sql.id(`${table}_no_replacement`)} before insert on ${sql.table(table)}
    when exists (select 1 from ${sql.table(table)} where ${sql.raw(same)})
    begin select raise(abort, ${sql.lit(words)}); end`.execute(db);
}
