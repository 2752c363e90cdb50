import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { Kysely } from 'kysely';
import type { Tables } from './database.ts';
import { openSqlite, prepareSqlite, sqliteDialect } from './dialect/sqlite.ts';
import { translateSqliteError } from './dialect/sqlite-error.ts';
import { StoreError, type StoreErrorCode } from './errors.ts';
import { clearLeavings } from './laid-blob.ts';
import { isCurrent, migrate, migrationsDone, refuseNewer } from './migrations/migrate.ts';

export const recordName = 'record.sqlite';

export interface Store {
  readonly db: Kysely<Tables>;
  /** The file that holds the record. */
  readonly path: string;
  close(): Promise<void>;
}

/**
 * Opens the record in the folder `home`; folder and record are made where they are not there yet.
 * @throws StoreError `store/held`, `store/full`, `store/not-a-record`, `store/newer`, `store/read-only`,
 * `store/unreachable`, `store/damaged`
 */
export async function openStore(home: string): Promise<Store> {
  makeFolder(home);
  const path = join(home, recordName);
  const database = openSqlite(path);
  try {
    const isNew = inspect(database, path);
    const db = new Kysely<Tables>({ dialect: sqliteDialect(database, path) });
    const done = isNew ? [] : await migrationsDone(db);
    refuseNewer(done, path);
    prepareSqlite(database, path);
    if (!isCurrent(done)) await migrate(db, path);
    await clearLeavings(db);
    return { db, path, close: () => db.destroy() };
  } catch (error) {
    database.close();
    throw error;
  }
}

const folderErrors: Readonly<Record<string, { readonly code: StoreErrorCode; readonly words: string }>> = {
  ENOSPC: { code: 'store/full', words: 'the disc is full; make room and try again' },
  EROFS: { code: 'store/read-only', words: 'the disc may only be read' },
  EACCES: { code: 'store/read-only', words: 'writing there is not permitted' },
  ENOTDIR: { code: 'store/unreachable', words: 'part of that path is a file' },
  EEXIST: { code: 'store/unreachable', words: 'that path is a file' },
};

function makeFolder(home: string): void {
  try {
    mkdirSync(home, { recursive: true });
  } catch (error) {
    const known = error instanceof Error && 'code' in error ? folderErrors[String(error.code)] : undefined;
    if (!known) throw error;
    const message = `${home}: the folder of the record could not be made: ${known.words}`;
    throw new StoreError(known.code, message, { context: { home }, cause: error });
  }
}

/** True for a file with nothing in it. Refuses a database that is not ours before anything in it is touched. */
function inspect(database: DatabaseSync, path: string): boolean {
  const names = tableNames(database, path);
  if (names.length === 0) return true;
  if (names.includes('migration') && names.includes('ledger')) return false;
  throw new StoreError('store/not-a-record', `${path}: the file is a database, but not a record of this program`, {
    context: { path },
  });
}

function tableNames(database: DatabaseSync, path: string): string[] {
  try {
    return database
      .prepare("select name from sqlite_master where type = 'table'")
      .all()
      .map(({ name }) => String(name));
  } catch (error) {
    throw translateSqliteError(error, path);
  }
}
