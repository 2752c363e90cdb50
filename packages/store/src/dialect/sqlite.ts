import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import { type SqliteDatabase, SqliteDialect, type SqliteStatement } from 'kysely';
import { translateSqliteError } from './sqlite-error.ts';

/** How long a write waits for another process before it gives up, in milliseconds. */
const busyTimeout_ms = 2000;

/** Opens a SQLite file, made if it is not there. Nothing is changed in it yet. */
export function openSqlite(path: string): DatabaseSync {
  return translated(path, () => new DatabaseSync(path, { timeout: busyTimeout_ms, enableForeignKeyConstraints: true }));
}

/**
 * Sets what a record needs: a write-ahead log, so that reading never waits for writing; a commit that is on the disc
 * before it is reported; and delete triggers that fire for REPLACE, too.
 */
export function prepareSqlite(database: DatabaseSync, path: string): void {
  translated(path, () => {
    database.exec('PRAGMA journal_mode = WAL');
    database.exec('PRAGMA synchronous = FULL');
    database.exec('PRAGMA recursive_triggers = ON');
  });
}

/** Kysely's SQLite dialect over Node's own SQLite. */
export function sqliteDialect(database: DatabaseSync, path: string): SqliteDialect {
  return new SqliteDialect({ database: adapt(database, path) });
}

function adapt(database: DatabaseSync, path: string): SqliteDatabase {
  return {
    prepare: (sql) => translated(path, () => prepare(database, sql, path)),
    close: () => database.close(),
  };
}

function prepare(database: DatabaseSync, sql: string, path: string): SqliteStatement {
  // A full disc can end a transaction by itself; rolling back again would hide the first error behind a second.
  if (sql === 'rollback' && !database.isTransaction) return idle;
  // Each of our transactions writes. Taking the write lock at once lets it wait for its turn; a lock taken later fails.
  const statement = database.prepare(sql === 'begin' ? 'begin immediate' : sql);
  return {
    reader: statement.columns().length > 0,
    all: (parameters) => translated(path, () => statement.all(...bind(parameters))),
    run: (parameters) => translated(path, () => statement.run(...bind(parameters))),
    iterate: (parameters) => iterate(statement, parameters, path),
  };
}

const idle: SqliteStatement = {
  reader: false,
  all: () => [],
  run: () => ({ changes: 0n, lastInsertRowid: 0n }),
  iterate: () => [][Symbol.iterator](),
};

function* iterate(statement: StatementSync, parameters: readonly unknown[], path: string): IterableIterator<unknown> {
  const rows = translated(path, () => statement.iterate(...bind(parameters)));
  for (;;) {
    const next = translated(path, () => rows.next());
    if (next.done) return;
    yield next.value;
  }
}

function bind(parameters: readonly unknown[]): SQLInputValue[] {
  return parameters.map((parameter) => {
    if (typeof parameter === 'boolean') return parameter ? 1 : 0;
    // Kysely's types let only values of our column types through, and SQLite takes all of those.
    return parameter as SQLInputValue;
  });
}

function translated<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw translateSqliteError(error, path);
  }
}
