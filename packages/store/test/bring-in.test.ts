import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  attachments,
  bringInCampaign,
  campaignCodes,
  campaignRows,
  isStoreError,
  ledgerEntries,
  readBlob,
  sha256,
  verifyLedger,
} from '../src/index.ts';
import { dialects } from './dialects.ts';
import { sampleCampaign, sampleRows } from './sample-campaign.ts';

for (const { name, open } of dialects) {
  test(`${name}: the rows of a campaign come back as they were brought in, in their order`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign('SAMPLE', 700));
    assert.deepEqual(await campaignCodes(db), ['SAMPLE']);
    assert.deepEqual(await campaignRows(db, 'SAMPLE'), sampleRows('SAMPLE', 700));
  });

  test(`${name}: files come back byte for byte under their SHA-256`, async (t) => {
    const { db } = await open(t);
    const { files } = sampleCampaign();
    await bringInCampaign(db, sampleCampaign());
    const held = await attachments(db, 'SAMPLE');
    assert.deepEqual(
      held.map(({ path }) => path),
      [...files.keys()].sort(),
    );
    for (const { path, sha256: key, size, media } of held) {
      const bytes = await readBlob(db, key);
      assert.deepEqual(Buffer.from(bytes), Buffer.from(files.get(path) ?? []));
      assert.deepEqual({ key, size }, { key: sha256(bytes), size: bytes.length });
      assert.equal(media, path.endsWith('.png') ? 'image/png' : 'text/csv');
    }
  });

  test(`${name}: each row and each file has one ledger entry with who, when and why`, async (t) => {
    const { db } = await open(t);
    const { entries } = await bringInCampaign(db, sampleCampaign());
    const ledger = await ledgerEntries(db, 'SAMPLE');
    const rows = Object.values(sampleRows()).reduce((sum, list) => sum + list.length, 0);
    assert.equal(entries, rows + 3);
    assert.deepEqual(
      ledger.map(({ seq }) => seq),
      Array.from({ length: rows + 3 }, (_, i) => i + 1),
    );
    for (const { who, at, why, before } of ledger)
      assert.deepEqual(
        { who, at, why, before },
        { who: 'gauger', at: '2026-03-10T08:00:00.000Z', why: 'first bring-in', before: null },
      );
    assert.deepEqual(await ledgerEntries(db, 'SAMPLE', { after: 2, limit: 3 }), ledger.slice(2, 5));
  });

  test(`${name}: the same content again writes nothing`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const before = await verifyLedger(db, 'SAMPLE');
    const again = await bringInCampaign(db, { ...sampleCampaign(), who: 'another', at: '2027-01-01T00:00:00.000Z' });
    assert.deepEqual(again, { campaign: 'SAMPLE', alreadyHeld: true, entries: 0 });
    assert.deepEqual(await verifyLedger(db, 'SAMPLE'), before);
  });

  test(`${name}: other content under the same code is refused and changes nothing`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign());
    const before = await verifyLedger(db, 'SAMPLE');
    const one = sampleCampaign();
    const otherFile = { ...one, files: new Map([...one.files, ['traces/P-001.csv', Uint8Array.from([1])] as const]) };
    for (const other of [sampleCampaign('SAMPLE', 3), otherFile]) {
      await assert.rejects(
        bringInCampaign(db, other),
        (error) => isStoreError(error) && error.code === 'store/campaign-differs',
      );
    }
    assert.deepEqual(await verifyLedger(db, 'SAMPLE'), before);
  });

  test(`${name}: two campaigns share the bytes of a file they both hold`, async (t) => {
    const { db } = await open(t);
    await bringInCampaign(db, sampleCampaign('ONE'));
    await bringInCampaign(db, sampleCampaign('TWO'));
    const { count } = await db
      .selectFrom('blob')
      .select((e) => e.fn.countAll<number>().as('count'))
      .executeTakeFirstOrThrow();
    assert.equal(count, 3);
    assert.ok((await verifyLedger(db, 'ONE')).ok && (await verifyLedger(db, 'TWO')).ok);
  });

  test(`${name}: a failure in the middle keeps nothing`, async (t) => {
    const { db } = await open(t);
    const failing = {
      ...sampleCampaign('SAMPLE', 900),
      onProgress: (done: number) => {
        if (done > 300) throw new Error('stopped');
      },
    };
    await assert.rejects(bringInCampaign(db, failing), /stopped/);
    assert.deepEqual(await campaignCodes(db), []);
    for (const table of ['record', 'ledger', 'blob', 'attachment'] as const)
      assert.deepEqual(await db.selectFrom(table).selectAll().execute(), []);
  });

  test(`${name}: an unknown campaign is named as such`, async (t) => {
    const { db } = await open(t);
    for (const ask of [campaignRows, verifyLedger])
      await assert.rejects(ask(db, 'NONE'), (error) => isStoreError(error) && error.code === 'store/unknown-campaign');
  });
}
