import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';
import { bringInCampaign, campaignCodes, campaignRows, isStoreError, openStore, verifyLedger } from '../src/index.ts';
import { temporaryFolder } from './dialects.ts';
import { kill, otherProcess } from './other-process.ts';
import { sampleCampaign, sampleRows } from './sample-campaign.ts';

test('while another process writes, the record can be read, writing is refused, and it works again afterwards', async (t) => {
  const home = temporaryFolder(t);
  const store = await openStore(home);
  t.after(() => store.close());
  await bringInCampaign(store.db, sampleCampaign('ONE'));
  const holder = await otherProcess(t, 'hold.ts', store.path);

  const refusal = bringInCampaign(store.db, sampleCampaign('TWO'));
  await assert.rejects(refusal, (error) => isStoreError(error) && error.code === 'store/held');
  assert.deepEqual(await campaignRows(store.db, 'ONE'), sampleRows('ONE'));
  const second = await openStore(home);
  assert.deepEqual(await campaignCodes(second.db), ['ONE']);
  await second.close();

  await kill(holder);
  await bringInCampaign(store.db, sampleCampaign('TWO'));
  assert.deepEqual(await campaignCodes(store.db), ['ONE', 'TWO']);
});

test('a process killed in the middle of a bring-in leaves nothing of it', async (t) => {
  const home = temporaryFolder(t);
  const before = await openStore(home);
  await bringInCampaign(before.db, sampleCampaign('ONE'));
  await before.close();
  await kill(await otherProcess(t, 'stop-in-the-middle.ts', home));

  const { db, close } = await openStore(home);
  t.after(close);
  assert.deepEqual(await campaignCodes(db), ['ONE']);
  for (const table of ['record', 'ledger', 'attachment'] as const) {
    const rows = await db.selectFrom(table).select('campaign').distinct().execute();
    assert.deepEqual(
      rows.map(({ campaign }) => campaign),
      ['ONE'],
    );
  }
  assert.ok((await verifyLedger(db, 'ONE')).ok);
  assert.equal((await bringInCampaign(db, sampleCampaign('HALF', 2000))).alreadyHeld, false);
  assert.ok((await verifyLedger(db, 'HALF')).ok);
});

test('several processes may open the same new record at once', async (t) => {
  const home = join(temporaryFolder(t), 'home');
  await Promise.all(Array.from({ length: 6 }, () => otherProcess(t, 'open.ts', home)));
  const store = await openStore(home);
  t.after(() => store.close());
  assert.deepEqual(await campaignCodes(store.db), []);
});
