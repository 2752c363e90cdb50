import assert from 'node:assert/strict';
import { describe, it } from 'node:test';
import { type RowsHeld, rowWith } from '@provinghouse/contract';
import {
  addRecords,
  benchBook,
  bringInCampaign,
  campaignCodes,
  type Database,
  heldRow,
  heldRows,
  ledgerEntries,
  openBenchBook,
  StoreError,
  verifyLedger,
  withdrawRecord,
} from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign } from './sample-campaign.ts';

const by = { who: 'examiner', at: '2026-03-09T10:00:00.000Z' };

async function withSample(db: Database) {
  return (await bringInCampaign(db, sampleCampaign())).campaign;
}

for (const { name, open } of dialects)
  describe(`withdrawing and listing rows, ${name}`, () => {
    it('a withdrawn row is gone from the record, stays in the ledger, and the ledger still holds', async (t) => {
      const { db } = await open(t);
      const campaign = await withSample(db);
      const { rows } = await heldRows(db, { campaign, kind: 'gauging', after: -1, limit: 1 });
      const [row] = rows;
      assert.ok(row);
      const { id, revision } = row;
      await withdrawRecord(db, { campaign, kind: 'gauging', id, revision, ...by, why: 'keyed twice' });
      assert.equal(await heldRow(db, { campaign, kind: 'gauging', id }), null);
      const entry = (await ledgerEntries(db, campaign, { limit: 10_000 })).at(-1);
      assert.equal(entry?.action, 'withdraw');
      assert.equal(entry?.why, 'keyed twice');
      assert.deepEqual(JSON.parse(entry?.before ?? ''), row.body);
      assert.equal((await verifyLedger(db, campaign)).ok, true);
      await addRecords(db, { campaign, rows: { gauging: [row.body] }, files: new Map(), ...by, why: 'it was right' });
      const again = await heldRow(db, { campaign, kind: 'gauging', id });
      assert.equal(again?.revision, 3, 'an old copy of the row must not fit the new one');
      assert.equal((await verifyLedger(db, campaign)).ok, true);
    });

    it('a row that another one names is not withdrawn', async (t) => {
      const { db } = await open(t);
      const campaign = await withSample(db);
      const [piece] = (await heldRows(db, { campaign, kind: 'pieces', after: -1, limit: 1 })).rows;
      assert.ok(piece);
      await assert.rejects(
        withdrawRecord(db, { campaign, kind: 'pieces', id: piece.id, revision: 1, ...by, why: 'wrong' }),
        (error) => error instanceof StoreError && error.code === 'store/still-named',
      );
      assert.equal((await verifyLedger(db, campaign)).ok, true);
    });

    it('pages give every row once, in order', async (t) => {
      const { db } = await open(t);
      const campaign = await withSample(db);
      const whole = await heldRows(db, { campaign, kind: 'gauging', after: -1, limit: 1000 });
      assert.equal(whole.next, null);
      const paged: string[] = [];
      for (let after: number | null = -1; after !== null; ) {
        const page: RowsHeld = await heldRows(db, { campaign, kind: 'gauging', after, limit: 1 });
        paged.push(...page.rows.map(({ id }) => id));
        after = page.next;
      }
      assert.deepEqual(
        paged,
        whole.rows.map(({ id }) => id),
      );
    });

    it('the book of the bench holds rows, is no campaign, and its ledger holds', async (t) => {
      const { db } = await open(t);
      await openBenchBook(db, by.at);
      await openBenchBook(db, by.at);
      const person = rowWith('people', { person: 'gauger', name: 'First person (invented)' });
      await addRecords(db, { campaign: benchBook, rows: { people: [person] }, files: new Map(), ...by, why: 'new' });
      assert.deepEqual(await campaignCodes(db), []);
      assert.equal((await heldRow(db, { campaign: benchBook, kind: 'people', id: 'gauger' }))?.body.name, person.name);
      assert.equal((await verifyLedger(db, benchBook)).ok, true);
    });
  });
