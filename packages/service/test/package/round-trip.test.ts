import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import type { CampaignRows } from '@provinghouse/contract';
import {
  attachments,
  bringInCampaign,
  campaignCodes,
  campaignRows,
  readBlob,
  reviseRecord,
  sha256,
  verifyLedger,
} from '@provinghouse/store';
import fc from 'fast-check';
import { bringIn, exampleRows, exportPackage, packageFiles, readPackage } from '../../src/package/index.ts';
import { exampleFiles, laboratory, quiet, temporaryFolder, writeFolder, writeZip } from './workshop.ts';

test('what goes in by folder comes out by export, and in again by ZIP, the same in every row and every byte', async (t) => {
  const folder = temporaryFolder(t);
  const [first, second] = [await laboratory(t), await laboratory(t)];
  writeFolder(join(folder, 'in'), exampleFiles());
  const into = await bringIn({ path: join(folder, 'in'), who: 'gauger', why: 'test' }, first.effects);
  assert.deepEqual(
    { campaign: into.campaign, held: into.alreadyHeld, files: into.files, notes: into.notes },
    { campaign: 'MY-CAMPAIGN', held: false, files: 3, notes: [] },
  );
  await exportPackage({ campaign: 'MY-CAMPAIGN', out: join(folder, 'out.zip') }, first.effects);
  const again = await bringIn({ path: join(folder, 'out.zip'), who: 'another', why: 'test' }, second.effects);
  assert.deepEqual(again, into);

  const [store, other] = [first.effects.store, second.effects.store];
  assert.deepEqual(await campaignRows(other, 'MY-CAMPAIGN'), await campaignRows(store, 'MY-CAMPAIGN'));
  assert.deepEqual(await campaignRows(store, 'MY-CAMPAIGN'), exampleRows());
  assert.deepEqual(await attachments(other, 'MY-CAMPAIGN'), await attachments(store, 'MY-CAMPAIGN'));
  for (const { path, sha256: key } of await attachments(other, 'MY-CAMPAIGN'))
    assert.deepEqual(Buffer.from(await readBlob(other, key)), Buffer.from(exampleFiles().get(path) ?? []));
  assert.ok((await verifyLedger(other, 'MY-CAMPAIGN')).ok);
});

test('two exports of the same campaign are the same file, in any time zone', async (t) => {
  const folder = temporaryFolder(t);
  const { effects } = await laboratory(t);
  await bringIn({ path: writeFolder(join(folder, 'in'), exampleFiles()), who: 'gauger', why: 'test' }, effects);
  const zone = process.env.TZ;
  t.after(() => {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });
  const digests: string[] = [];
  for (const place of ['UTC', 'Pacific/Auckland', 'America/St_Johns']) {
    process.env.TZ = place;
    const out = join(folder, `${digests.length}.zip`);
    await exportPackage({ campaign: 'MY-CAMPAIGN', out }, effects);
    digests.push(sha256(readFileSync(out)));
  }
  assert.equal(new Set(digests).size, 1);
});

test('the same package again writes nothing, whether as folder or ZIP', async (t) => {
  const folder = temporaryFolder(t);
  const { effects } = await laboratory(t);
  const path = writeFolder(join(folder, 'in'), exampleFiles());
  await bringIn({ path, who: 'gauger', why: 'test' }, effects);
  const before = await verifyLedger(effects.store, 'MY-CAMPAIGN');
  for (const same of [path, await writeZip(join(folder, 'in.zip'), exampleFiles())]) {
    const result = await bringIn({ path: same, who: 'gauger', why: 'test' }, effects);
    assert.ok(result.alreadyHeld);
    assert.match(result.notes.join(), /nothing was written/);
  }
  assert.deepEqual(await verifyLedger(effects.store, 'MY-CAMPAIGN'), before);
});

test('another package under the same code is refused with a cure', async (t) => {
  const folder = temporaryFolder(t);
  const { effects } = await laboratory(t);
  await bringIn({ path: writeFolder(join(folder, 'in'), exampleFiles()), who: 'gauger', why: 'test' }, effects);
  const rows = exampleRows();
  const other = { ...rows, people: rows.people.map((row) => ({ ...row, role: 'another' })) };
  const files = packageFiles({
    rows: other,
    files: new Map([...exampleFiles()].filter(([path]) => path.includes('/'))),
  });
  await assert.rejects(
    bringIn({ path: writeFolder(join(folder, 'other'), files), who: 'gauger', why: 'test' }, effects),
    {
      name: 'InputError',
      code: 'package/campaign-differs',
      message: /another code in campaign.csv, or export the campaign and compare/,
    },
  );
  assert.deepEqual(await campaignRows(effects.store, 'MY-CAMPAIGN'), rows);
});

test('a corrected campaign is exported as corrected', async (t) => {
  const folder = temporaryFolder(t);
  const [first, second] = [await laboratory(t), await laboratory(t)];
  await bringIn({ path: writeFolder(join(folder, 'in'), exampleFiles()), who: 'gauger', why: 'test' }, first.effects);
  const [person] = exampleRows().people;
  const body = { ...person, role: 'gauging, "pulls", and\ncutting' };
  await reviseRecord(first.effects.store, {
    campaign: 'MY-CAMPAIGN',
    kind: 'people',
    id: 'gauger',
    revision: 1,
    body,
    who: 'x',
    why: 'y',
    at: '2026-01-01T00:00:00Z',
  });
  await exportPackage({ campaign: 'MY-CAMPAIGN', out: join(folder, 'out.zip') }, first.effects);
  await bringIn({ path: join(folder, 'out.zip'), who: 'x', why: 'y' }, second.effects);
  assert.deepEqual((await campaignRows(second.effects.store, 'MY-CAMPAIGN')).people[0], body);
});

test('rows written to a package are read back the same, whatever their texts and numbers', async (t) => {
  const folder = temporaryFolder(t);
  const base = exampleRows();
  const text = fc
    .string({ unit: 'grapheme', minLength: 1 })
    .map((s) => s.trim().replaceAll('\r', ' '))
    .filter((s) => s !== '' && !/[\p{Cc}]/u.test(s.replaceAll(/[\n\t]/g, '')));
  const hardText = fc.oneof(
    text,
    fc.constantFrom('a,b', '"quoted"', 'two\nlines', '=1+1', '#', 'a;b', '\u00e9\u{1f517}', "'"),
  );
  const number = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
  let round = 0;
  const law = fc.asyncProperty(hardText, hardText, number, async (title, note, value) => {
    const rows: CampaignRows = {
      ...base,
      campaign: base.campaign.map((row) => ({ ...row, title, question: note })),
      gauging: base.gauging.map((row) => ({ ...row, value_mm: value })),
    };
    const files = packageFiles({ rows, files: new Map([...exampleFiles()].filter(([path]) => path.includes('/'))) });
    round += 1;
    const reading = await readPackage(writeFolder(join(folder, String(round)), files), quiet);
    assert.deepEqual(reading.rows, rows);
    assert.deepEqual(reading.notes, []);
  });
  await fc.assert(law, { seed: 7, numRuns: 40 });
});

test('an export of an unknown campaign names those there are', async (t) => {
  const { effects } = await laboratory(t);
  const out = join(temporaryFolder(t), 'out.zip');
  await assert.rejects(exportPackage({ campaign: 'NONE', out }, effects), {
    code: 'campaign/unknown',
    message: /it holds none yet/,
  });
  await bringInCampaign(effects.store, {
    rows: exampleRows(),
    files: new Map(),
    who: 'x',
    why: 'y',
    at: '2026-01-01T00:00:00Z',
  });
  await assert.rejects(exportPackage({ campaign: 'NONE', out }, effects), {
    code: 'campaign/unknown',
    message: /MY-CAMPAIGN/,
  });
});

test('a bring-in that is given up keeps nothing', async (t) => {
  const folder = temporaryFolder(t);
  const { effects } = await laboratory(t);
  const path = writeFolder(join(folder, 'in'), exampleFiles());
  for (const stage of ['reading the package', 'writing the record']) {
    const giveUp = new AbortController();
    const progress = (label: string) => {
      if (label === stage) giveUp.abort();
    };
    await assert.rejects(bringIn({ path, who: 'x', why: 'y' }, { ...effects, progress, signal: giveUp.signal }), {
      name: 'AbortError',
    });
    assert.deepEqual(await campaignCodes(effects.store), []);
  }
});

test('an export that cannot be written leaves nothing', async (t) => {
  const folder = temporaryFolder(t);
  const { effects } = await laboratory(t);
  await bringIn({ path: writeFolder(join(folder, 'in'), exampleFiles()), who: 'gauger', why: 'test' }, effects);
  for (const out of [join(folder, 'not-there', 'out.zip'), join(folder, 'in')])
    await assert.rejects(exportPackage({ campaign: 'MY-CAMPAIGN', out }, effects));
  assert.deepEqual(readdirSync(folder), ['in']);
});
