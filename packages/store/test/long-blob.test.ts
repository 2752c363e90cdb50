import assert from 'node:assert/strict';
import { once } from 'node:events';
import { DatabaseSync } from 'node:sqlite';
import { test } from 'node:test';
import {
  addRecords,
  attachments,
  bringInCampaign,
  isStoreError,
  openStore,
  readBlob,
  type Store,
  sha256,
  verifyLedger,
  writeBlob,
} from '../src/index.ts';
import { dialects, temporaryFolder } from './dialects.ts';
import { longBytes } from './long-bytes.ts';
import { kill, otherProcess } from './other-process.ts';
import { sampleCampaign } from './sample-campaign.ts';

const bytes = longBytes();
const key = sha256(bytes);
const path = 'documents/long.bin';
const by = { who: 'gauger', why: 'a long file', at: '2026-03-11T08:00:00.000Z' };

async function partsKept({ db }: Pick<Store, 'db'>): Promise<number> {
  return (await db.selectFrom('blob_part').select('place').execute()).length;
}

async function withLong({ db }: Pick<Store, 'db'>): Promise<void> {
  await bringInCampaign(db, sampleCampaign());
  await addRecords(db, { campaign: 'SAMPLE', rows: {}, files: new Map([[path, bytes]]), ...by });
}

for (const { name, open } of dialects) {
  test(`${name}: a long file comes back byte for byte, whichever way it came in, and is kept once`, async (t) => {
    const store = await open(t);
    const { db } = store;
    const sample = sampleCampaign();
    await bringInCampaign(db, { ...sample, files: new Map([...sample.files, [path, bytes]]) });
    const parts = await partsKept(store);
    assert.ok(parts > 1);
    assert.deepEqual(await writeBlob(db, bytes), { sha256: key, size: bytes.length });
    await addRecords(db, { campaign: 'SAMPLE', rows: {}, files: new Map([['documents/again.bin', key]]), ...by });
    assert.ok(Buffer.from(await readBlob(db, key)).equals(bytes));
    assert.equal(await partsKept(store), parts);
    const sizes = (await attachments(db, 'SAMPLE')).filter((file) => file.sha256 === key).map(({ size }) => size);
    assert.deepEqual(sizes, [bytes.length, bytes.length]);
    assert.ok((await verifyLedger(db, 'SAMPLE')).ok);
  });

  test(`${name}: while a long file is written, another entry is kept before it`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const kept: string[] = [];
    const long = writeBlob(db, bytes).then(() => kept.push('long'));
    const files = new Map([['documents/short.txt', Uint8Array.from([1])]]);
    const short = addRecords(db, { campaign: 'SAMPLE', rows: {}, files, ...by }).then(() => kept.push('short'));
    await Promise.all([long, short]);
    assert.deepEqual(kept, ['short', 'long']);
  });

  test(`${name}: a part refuses to be changed, deleted, written over or added to a file that is whole`, async (t) => {
    const { db } = await open(t);
    await writeBlob(db, bytes);
    const other = Uint8Array.from([9]);
    const ofBlob = { sha256: key, place: 1, bytes: other };
    const changes = [
      db.updateTable('blob_part').set({ bytes: other }).where('sha256', '=', key),
      db.deleteFrom('blob_part').where('sha256', '=', key),
      db.replaceInto('blob_part').values(ofBlob),
      db.insertInto('blob_part').values({ ...ofBlob, place: 99 }),
    ];
    for (const query of changes) await assert.rejects(query.execute(), /a blob never changes/);
    assert.equal(sha256(await readBlob(db, key)), key);
  });

  test(`${name}: an addition that is refused leaves nothing of its long file`, async (t) => {
    const store = await open(t);
    await bringInCampaign(store.db, sampleCampaign());
    const files = new Map([
      [path, bytes],
      ['traces/P-001.csv', Uint8Array.from([1])],
    ]);
    await assert.rejects(
      addRecords(store.db, { campaign: 'SAMPLE', rows: {}, files, ...by }),
      (error) => isStoreError(error) && error.code === 'store/already-there',
    );
    assert.equal(await partsKept(store), 0);
  });
}

test('a byte of any part altered, a part taken away and one slipped in are found', async (t) => {
  const store = await openStore(temporaryFolder(t));
  t.after(() => store.close());
  await withLong(store);
  const raw = new DatabaseSync(store.path);
  t.after(() => raw.close());
  for (const change of ['update', 'delete', 'addition', 'replacement']) raw.exec(`drop trigger blob_part_no_${change}`);
  raw.exec('create temp table whole as select * from blob_part');
  const parts = await partsKept(store);
  const shifted = "cast(substr(bytes, 2) || x'00' as blob)";
  const tampering = [
    ...Array.from({ length: parts }, (_, at) => `update blob_part set bytes = ${shifted} where place = ${at + 1}`),
    `delete from blob_part where place = ${parts}`,
    `insert into blob_part select sha256, ${parts + 1}, x'00' from blob_part limit 1`,
  ];
  for (const statement of tampering) {
    raw.exec(statement);
    const { ok, disagreements } = await verifyLedger(store.db, 'SAMPLE');
    assert.deepEqual([ok, disagreements.length], [false, 1], statement);
    assert.match(disagreements[0] ?? '', /long.bin: the bytes kept/);
    await assert.rejects(readBlob(store.db, key), (error) => isStoreError(error) && error.code === 'store/damaged');
    raw.exec('delete from blob_part; insert into blob_part select * from whole');
    assert.ok((await verifyLedger(store.db, 'SAMPLE')).ok);
  }
});

test('a process killed in the middle of a long file leaves nothing of it, and the record holds', async (t) => {
  const home = temporaryFolder(t);
  const before = await openStore(home);
  await bringInCampaign(before.db, sampleCampaign());
  const check = await verifyLedger(before.db, 'SAMPLE');
  await kill(await otherProcess(t, 'stop-in-a-file.ts', home));
  // It was killed in the middle: parts are there, and nobody is shown any of them.
  assert.ok((await partsKept(before)) > 0);
  await assert.rejects(readBlob(before.db, key), (error) => isStoreError(error) && error.code === 'store/unknown-blob');
  assert.deepEqual(await verifyLedger(before.db, 'SAMPLE'), check);
  await before.close();

  const store = await openStore(home);
  t.after(() => store.close());
  assert.equal(await partsKept(store), 0);
  assert.deepEqual(await verifyLedger(store.db, 'SAMPLE'), check);
  await writeBlob(store.db, bytes);
  assert.equal(sha256(await readBlob(store.db, key)), key);
});

test('two processes write one long file, a third opens the record meanwhile, and it is kept whole', async (t) => {
  const home = temporaryFolder(t);
  const store = await openStore(home);
  t.after(() => store.close());
  const writers = await Promise.all([1, 2].map(() => otherProcess(t, 'write-a-file.ts', home)));
  await (await openStore(home)).close();
  for (const writer of writers) {
    if (writer.exitCode === null) await once(writer, 'exit');
    assert.equal(writer.exitCode, 0);
  }
  assert.equal(sha256(await readBlob(store.db, key)), key);
});
