import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bringInCampaign, isStoreError, readBlob, sha256 } from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign } from './sample-campaign.ts';

for (const { name, open } of dialects) {
  test(`${name}: a blob refuses to be changed, deleted or written over`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const key = sha256(Uint8Array.from([0, 1, 2, 255]));
    const bytes = Uint8Array.from([9]);
    const change = db.updateTable('blob').set({ bytes }).where('sha256', '=', key);
    const removal = db.deleteFrom('blob').where('sha256', '=', key);
    const replacement = db.replaceInto('blob').values({ sha256: key, size: 1, bytes });
    for (const query of [change, removal, replacement]) await assert.rejects(query.execute(), /a blob never changes/);
    assert.deepEqual([...(await readBlob(db, key))], [0, 1, 2, 255]);
  });

  test(`${name}: a hash that is not kept is named as such`, async (t) => {
    const { db } = await open(t);
    await assert.rejects(
      readBlob(db, 'f'.repeat(64)),
      (error) => isStoreError(error) && error.code === 'store/unknown-blob',
    );
  });
}
