import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  bringInCampaign,
  campaignRows,
  isStoreError,
  ledgerEntries,
  type Revision,
  reviseRecord,
  type StoreErrorCode,
  verifyLedger,
} from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign, sampleRows } from './sample-campaign.ts';

const [, second] = sampleRows().pulls;
const body = { ...second, panel_maximum_kN: 36.8 };
const correction: Revision = {
  campaign: 'SAMPLE',
  kind: 'pulls',
  id: 'P-002',
  revision: 1,
  body,
  who: 'examiner',
  why: 'the panel was read again from the photograph',
  at: '2026-03-11T08:00:00.000Z',
};

function coded(code: StoreErrorCode) {
  return (error: unknown) => isStoreError(error) && error.code === code;
}

for (const { name, open } of dialects) {
  test(`${name}: a correction stands in the row, and the value before stays in the ledger with its reason`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const { revision, ledgerSeq } = await reviseRecord(db, correction);
    assert.equal(revision, 2);
    assert.deepEqual((await campaignRows(db, 'SAMPLE')).pulls[1], body);
    const entry = (await ledgerEntries(db, 'SAMPLE')).at(-1);
    assert.ok(entry);
    assert.deepEqual(
      { seq: entry.seq, action: entry.action, who: entry.who, why: entry.why },
      { seq: ledgerSeq, action: 'correct', who: 'examiner', why: correction.why },
    );
    assert.deepEqual(JSON.parse(entry.before ?? ''), second);
    assert.deepEqual(JSON.parse(entry.after), body);
    assert.ok((await verifyLedger(db, 'SAMPLE')).ok);
  });

  test(`${name}: of two corrections made from the same revision the second is refused`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    await reviseRecord(db, correction);
    await assert.rejects(reviseRecord(db, correction), coded('store/revision-conflict'));
    await reviseRecord(db, { ...correction, revision: 2, body: { ...body, panel_maximum_kN: 37 } });
    assert.ok((await verifyLedger(db, 'SAMPLE')).ok);
  });

  const refused = [
    { what: 'without a reason', change: { why: '  ' }, code: 'store/reason-missing' },
    {
      what: 'of a row that is not there',
      change: { id: 'P-003', body: { ...body, pull: 'P-003' } },
      code: 'store/unknown-record',
    },
    { what: 'of the key', change: { body: { ...body, pull: 'P-003' } }, code: 'store/bad-row' },
    { what: 'with a number as text', change: { body: { ...body, panel_maximum_kN: '36.8' } }, code: 'store/bad-row' },
    { what: 'out of bounds', change: { body: { ...body, panel_maximum_kN: -1 } }, code: 'store/bad-row' },
    { what: 'with a field that is not there', change: { body: { ...body, colour: 'grey' } }, code: 'store/bad-row' },
    { what: 'with a needed cell emptied', change: { body: { ...body, rig: null } }, code: 'store/bad-row' },
  ] as const;

  for (const { what, change, code } of refused) {
    test(`${name}: a correction ${what} is refused and leaves no trace`, async (t) => {
      const { db } = await open(t);
      await bringInCampaign(db, sampleCampaign());
      const before = await verifyLedger(db, 'SAMPLE');
      await assert.rejects(reviseRecord(db, { ...correction, ...change }), coded(code));
      assert.deepEqual(await verifyLedger(db, 'SAMPLE'), before);
    });
  }

  test(`${name}: after a correction both the package as first brought in and the corrected one are held already`, async (t) => {
    const { db } = await open(t);
    const { rows, ...others } = sampleCampaign();
    await bringInCampaign(db, { rows, ...others });
    await reviseRecord(db, correction);
    const corrected = { ...others, rows: await campaignRows(db, 'SAMPLE') };
    assert.ok((await bringInCampaign(db, { rows, ...others })).alreadyHeld);
    assert.ok((await bringInCampaign(db, corrected)).alreadyHeld);
  });
}
