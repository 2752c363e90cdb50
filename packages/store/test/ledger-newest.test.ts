import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bringInCampaign, countEntries, lastEntryOf, ledgerEntries, newestEntries } from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign } from './sample-campaign.ts';

for (const { name, open } of dialects) {
  test(`${name}: newest entries stand in turned order, before a place, of the kinds asked for, and of one campaign`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    await bringInCampaign(db, sampleCampaign('OTHER'));
    const all = (await ledgerEntries(db, 'SAMPLE')).reverse();
    const asked = { campaign: 'SAMPLE', kinds: [], before: null, limit: 1000 };
    assert.deepEqual(await newestEntries(db, asked), all);
    assert.deepEqual(await newestEntries(db, { ...asked, before: 9, limit: 3 }), all.slice(-8, -5));
    const kinds = ['gauging', 'attachment'];
    const ofKinds = all.filter(({ kind }) => kinds.includes(kind));
    assert.deepEqual(await newestEntries(db, { ...asked, kinds }), ofKinds);
    assert.deepEqual(
      [await countEntries(db, asked), await countEntries(db, { ...asked, kinds })],
      [all.length, ofKinds.length],
    );
    assert.deepEqual(await newestEntries(db, { ...asked, words: ['8.001'] }), [
      all.find(({ after }) => after.includes('8.001')),
    ]);
  });

  test(`${name}: the last entry of a record is found, and none of one that was never written`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const last = (await ledgerEntries(db, 'SAMPLE')).findLast(({ kind }) => kind === 'pulls');
    assert.ok(last);
    const of = { campaign: 'SAMPLE', kind: 'pulls', id: last.record };
    assert.deepEqual(await lastEntryOf(db, of), last);
    assert.equal(await lastEntryOf(db, { ...of, id: 'NONE' }), null);
    assert.equal(await lastEntryOf(db, { ...of, campaign: 'OTHER' }), null);
  });
}
