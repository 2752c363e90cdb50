import assert from 'node:assert/strict';
import { test } from 'node:test';
import { sql } from 'kysely';
import { bringInCampaign, campaignCodes, isStoreError, openStore, type Store, verifyLedger } from '../src/index.ts';
import { temporaryFolder } from './dialects.ts';
import { sampleCampaign } from './sample-campaign.ts';
import { makeReadOnly, smallDisc } from './small-disc.ts';

async function fullAndUsable({ db }: Store): Promise<void> {
  const large = { ...sampleCampaign('LARGE', 2000), files: new Map([['traces/P-001.csv', new Uint8Array(4_000_000)]]) };
  await assert.rejects(bringInCampaign(db, large), (error) => isStoreError(error) && error.code === 'store/full');
  assert.deepEqual(await campaignCodes(db), ['ONE']);
  assert.ok((await verifyLedger(db, 'ONE')).ok);
  await bringInCampaign(db, sampleCampaign('TWO'));
  assert.deepEqual(await campaignCodes(db), ['ONE', 'TWO']);
}

test('a record that may not grow any more says that it is full, keeps nothing of what was written, and stays usable', async (t) => {
  const store = await openStore(temporaryFolder(t));
  t.after(() => store.close());
  await bringInCampaign(store.db, sampleCampaign('ONE'));
  await sql`PRAGMA max_page_count = 400`.execute(store.db);
  await fullAndUsable(store);
});

test('a disc that is full says so, keeps nothing of what was written, and stays usable', async (t) => {
  const disc = smallDisc(t, 2048);
  if ('reason' in disc) return t.skip(disc.reason);
  const store = await openStore(disc.folder);
  try {
    await bringInCampaign(store.db, sampleCampaign('ONE'));
    await fullAndUsable(store);
  } finally {
    await store.close();
  }
});

test('a disc too small for an empty record says that it is full', async (t) => {
  const disc = smallDisc(t, 16);
  if ('reason' in disc) return t.skip(disc.reason);
  await assert.rejects(openStore(disc.folder), (error) => isStoreError(error) && error.code === 'store/full');
});

test('a disc that may only be read says so', async (t) => {
  const disc = smallDisc(t, 1024);
  if ('reason' in disc) return t.skip(disc.reason);
  makeReadOnly(disc.folder);
  await assert.rejects(
    openStore(disc.folder),
    (error) => isStoreError(error) && /read-only|unreachable/.test(error.code),
  );
});
