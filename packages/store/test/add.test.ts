import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  addRecords,
  attachments,
  bringInCampaign,
  campaignRows,
  isStoreError,
  ledgerEntries,
  type RecordsToAdd,
  readBlob,
  type StoreErrorCode,
  verifyLedger,
} from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign, sampleRows } from './sample-campaign.ts';

const [first] = sampleRows().pulls;
if (!first) throw new Error('the examples hold a pull');
const pull = { ...first, pull: 'P-003', trace: 'traces/P-003.csv' };
const trace = new TextEncoder().encode('time_s,force_kN\n0,0\n1,2\n');
const addition: RecordsToAdd = {
  campaign: 'SAMPLE',
  rows: { pulls: [pull] },
  files: new Map([['traces/P-003.csv', trace]]),
  who: 'gauger',
  why: 'pulled on RIG-1',
  at: '2026-03-11T08:00:00.000Z',
};

function coded(code: StoreErrorCode) {
  return (error: unknown) => isStoreError(error) && error.code === code;
}

for (const { name, open } of dialects) {
  test(`${name}: an added pull stands last, with its recording, each with its entry in the ledger`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const before = await verifyLedger(db, 'SAMPLE');
    const { entries, ledgerSeq } = await addRecords(db, addition);
    assert.equal(entries, 2);
    assert.deepEqual((await campaignRows(db, 'SAMPLE')).pulls.at(-1), pull);
    const held = (await attachments(db, 'SAMPLE')).find(({ path }) => path === 'traces/P-003.csv');
    assert.ok(held);
    assert.deepEqual(new Uint8Array(await readBlob(db, held.sha256)), trace);
    const added = (await ledgerEntries(db, 'SAMPLE')).slice(-2);
    assert.deepEqual(
      added.map(({ seq, action, kind, record, why, who }) => ({ seq, action, kind, record, why, who })),
      [
        { seq: ledgerSeq - 1, action: 'attach', kind: 'attachment', record: 'traces/P-003.csv' },
        { seq: ledgerSeq, action: 'add', kind: 'pulls', record: 'P-003' },
      ].map((entry) => ({ ...entry, why: addition.why, who: addition.who })),
    );
    const after = await verifyLedger(db, 'SAMPLE');
    assert.ok(after.ok);
    assert.notEqual(after.head, before.head);
  });

  const refused = [
    { what: 'without a reason', change: { why: ' ' }, code: 'store/reason-missing' },
    { what: 'to a campaign that is not there', change: { campaign: 'NONE' }, code: 'store/unknown-campaign' },
    {
      what: 'of a key that is taken',
      change: { rows: { pulls: [{ ...pull, pull: 'P-001' }] } },
      code: 'store/already-there',
    },
    {
      what: 'of a path that is taken',
      change: { files: new Map([['traces/P-001.csv', trace]]) },
      code: 'store/already-there',
    },
    {
      what: 'of a piece that is not there',
      change: { rows: { pulls: [{ ...pull, piece: 'NONE' }] } },
      code: 'store/bad-row',
    },
    { what: 'without its recording', change: { files: new Map() }, code: 'store/bad-row' },
    { what: 'that reads nothing', change: { rows: { pulls: [{ ...pull, trace: null }] } }, code: 'store/bad-row' },
    { what: 'out of bounds', change: { rows: { pulls: [{ ...pull, panel_maximum_kN: -1 }] } }, code: 'store/bad-row' },
  ] as const;

  for (const { what, change, code } of refused) {
    test(`${name}: an addition ${what} is refused and leaves no trace`, async (t) => {
      const { db } = await open(t);
      await bringInCampaign(db, sampleCampaign());
      const before = [
        await verifyLedger(db, 'SAMPLE'),
        await attachments(db, 'SAMPLE'),
        await campaignRows(db, 'SAMPLE'),
      ];
      await assert.rejects(addRecords(db, { ...addition, ...change }), coded(code));
      const after = [
        await verifyLedger(db, 'SAMPLE'),
        await attachments(db, 'SAMPLE'),
        await campaignRows(db, 'SAMPLE'),
      ];
      assert.deepEqual(after, before);
    });
  }
}
