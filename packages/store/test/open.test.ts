import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { test } from 'node:test';
import { sql } from 'kysely';
import {
  bringInCampaign,
  campaignRows,
  isStoreError,
  openStore,
  recordName,
  type StoreErrorCode,
} from '../src/index.ts';
import { temporaryFolder } from './dialects.ts';
import { sampleCampaign, sampleRows } from './sample-campaign.ts';

function coded(code: StoreErrorCode) {
  return (error: unknown) => isStoreError(error) && error.code === code;
}

test('a record is made with its folder, and what it holds is there when it is opened again', async (t) => {
  const home = join(temporaryFolder(t), 'not', 'there', 'yet');
  const first = await openStore(home);
  await bringInCampaign(first.db, sampleCampaign());
  await first.close();
  const second = await openStore(home);
  t.after(() => second.close());
  assert.deepEqual(await campaignRows(second.db, 'SAMPLE'), sampleRows());
});

test('a commit is on the disc before it is reported', async (t) => {
  const store = await openStore(temporaryFolder(t));
  t.after(() => store.close());
  const pragma = async (name: string) => {
    const { rows } = await sql.raw<Record<string, unknown>>(`PRAGMA ${name}`).execute(store.db);
    return Object.values(rows[0] ?? {})[0];
  };
  // 2 is FULL.
  assert.deepEqual([await pragma('journal_mode'), await pragma('synchronous')], ['wal', 2]);
  assert.deepEqual([await pragma('foreign_keys'), await pragma('recursive_triggers')], [1, 1]);
});

test('a file that is no database is not a record and stays as it is', async (t) => {
  const home = temporaryFolder(t);
  writeFileSync(
    join(home, recordName),
    'a letter to the harbour office, long enough to be read as a header of a file'.repeat(20),
  );
  await assert.rejects(openStore(home), coded('store/not-a-record'));
});

test('a database of something else is not a record, and no table is added to it', async (t) => {
  const home = temporaryFolder(t);
  const other = new DatabaseSync(join(home, recordName));
  other.exec('create table recipe (name text)');
  await assert.rejects(openStore(home), coded('store/not-a-record'));
  const tables = other.prepare('select name from sqlite_master').all();
  assert.deepEqual(
    tables.map(({ name }) => name),
    ['recipe'],
  );
  assert.equal(other.prepare('PRAGMA journal_mode').get()?.journal_mode, 'delete');
  other.close();
});

test('a record of a newer version is refused and stays as it is', async (t) => {
  const home = temporaryFolder(t);
  const store = await openStore(home);
  await store.close();
  const raw = new DatabaseSync(store.path);
  raw.exec("insert into migration (name) values ('9999-later')");
  raw.close();
  await assert.rejects(openStore(home), (error) => coded('store/newer')(error) && /9999-later/.test(String(error)));
});

test('a home that is a file is named as such', async (t) => {
  const home = join(temporaryFolder(t), 'file');
  writeFileSync(home, '');
  await assert.rejects(openStore(home), coded('store/unreachable'));
});

test('a record whose file is a folder cannot be opened', async (t) => {
  const home = temporaryFolder(t);
  mkdirSync(join(home, recordName));
  await assert.rejects(openStore(home), coded('store/unreachable'));
});

test('a record that may only be read says so when it is written', async (t) => {
  const home = temporaryFolder(t);
  const store = await openStore(home);
  t.after(() => store.close());
  await bringInCampaign(store.db, sampleCampaign('ONE'));
  await sql`PRAGMA query_only = ON`.execute(store.db);
  await assert.rejects(bringInCampaign(store.db, sampleCampaign('TWO')), coded('store/read-only'));
  assert.deepEqual(await campaignRows(store.db, 'ONE'), sampleRows('ONE'));
});
