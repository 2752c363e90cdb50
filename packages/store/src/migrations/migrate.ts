import type { Kysely, Migration } from 'kysely';
import type { Database, Tables } from '../database.ts';
import { StoreError } from '../errors.ts';
import { record } from './0001-record.ts';
import { blobPart } from './0002-blob-part.ts';

/** Forward only: a migration that was published is never changed or taken out, only followed by another. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-record': record,
  '0002-blob-part': blobPart,
};

/**
 * Brings the record to the layout of this program, in one transaction; another process that opens the same new record
 * waits its turn and then finds nothing left to do. (Kysely's own migrator reads what is done before it takes SQLite's
 * write lock, so two of them can collide.)
 */
export async function migrate(db: Kysely<Tables>, path: string): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    await transaction.schema
      .createTable('migration')
      .ifNotExists()
      .addColumn('name', 'text', (column) => column.primaryKey().notNull())
      .execute();
    const done = await migrationsDone(transaction);
    refuseNewer(done, path);
    for (const [name, migration] of Object.entries(migrations)) {
      if (done.includes(name)) continue;
      await migration.up(transaction);
      await transaction.insertInto('migration').values({ name }).execute();
    }
  });
}

/** Whether a record has been through every migration known here. */
export function isCurrent(done: readonly string[]): boolean {
  return Object.keys(migrations).every((name) => done.includes(name));
}

/** Names of the migrations a record has been through. */
export async function migrationsDone(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('migration').select('name').orderBy('name').execute();
  return rows.map(({ name }) => name);
}

/** A record that has been through a migration unknown here was made by a newer program; reading it would be a guess. */
export function refuseNewer(done: readonly string[], path: string): void {
  const unknown = done.filter((name) => !Object.hasOwn(migrations, name));
  if (unknown.length === 0) return;
  throw new StoreError(
    'store/newer',
    `${path}: the record was made by a newer version (it has ${unknown.join(', ')}); update this program`,
    { context: { path, unknown } },
  );
}
