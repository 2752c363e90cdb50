import { type Kysely, type Migration, Migrator, sql } from 'kysely';
import type { Tables } from '../database.ts';
import { StoreError } from '../errors.ts';
import { record } from './0001-record.ts';

/** Forward only: a migration that was published is never changed or taken out, only followed by another. */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-record': record,
};

/** Brings the record to the layout of this program. A record that is there already is left alone. */
export async function migrate(db: Kysely<Tables>, done: readonly string[]): Promise<void> {
  if (Object.keys(migrations).every((name) => done.includes(name))) return;
  const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...migrations }) } });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
}

/** Names of the migrations a record has been through. */
export async function migrationsDone(db: Kysely<Tables>): Promise<string[]> {
  const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db);
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
