import assert from 'node:assert/strict';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, before, test } from 'node:test';
import { bringIn, exampleRows, judgeCampaign, packageFiles } from '@provinghouse/service';
import { benchBook, enterRows, holdFile } from '@provinghouse/service/entry';
import type { Browser, Page } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { type EmptyBench, serveEmpty } from './empty-bench.ts';
import { sitDown } from './gauging-page.ts';

const who = 'wren';
const code = 'OWN-RULE';
let bench: EmptyBench;
let browser: Browser;

/** A rule of the lab's own (invented): the bar may be off by so much, and the links are long. */
function rule(tolerance_mm: number, id = 'Quay rule') {
  const one = { sources: ['own'], crossChecked: false };
  return {
    id,
    title: 'Long link chain of the quay (invented)',
    edition: '2026-02',
    range: [6, 16],
    confidence: 'A',
    confidenceWhy: 'our own',
    sources: { own: { kind: 'own', citation: 'Rule of the quay, sheet 2 (invented)' } },
    rules: [
      { id: 'pitch', quantity: 'pitch', statement: 'pitch 5 d', js: '5 * d', ...one },
      { id: 'width', quantity: 'innerWidthMin', statement: 'inside width 1.3 d', js: '1.3 * d', ...one },
      { id: 'outer', quantity: 'outerWidthMax', statement: 'outside width 3.6 d', js: '3.6 * d', ...one },
      { id: 'bar', quantity: 'diameterTolerance', statement: 'bar by rule', value: tolerance_mm, unit: 'mm', ...one },
    ],
  };
}

const ofCampaign = rule(0.1);
/** Of the same name at the bench, and wide: a reading that the campaign's own refuses fits it. */
const ofBench = rule(1.6);
const ofBenchAlone = rule(0.4, 'Shore rule');

before(async () => {
  bench = await serveEmpty();
  browser = await launchChromium();
  const { effects } = bench;
  for (const [name, one] of [
    ['quay-rule', ofBench],
    ['shore-rule', ofBenchAlone],
  ] as const) {
    const { sha256 } = await holdFile(new TextEncoder().encode(JSON.stringify(one)), effects);
    await enterRows(benchBook, { rows: {}, files: [{ path: `specifications/${name}.json`, sha256 }], who }, effects);
  }
  const folder = await mkdtemp(join(tmpdir(), 'provinghouse-own-rule-'));
  for (const [path, bytes] of ownPackage()) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), bytes);
  }
  await bringIn({ path: folder, who, why: 'invented' }, effects);
  await rm(folder, { recursive: true });
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

/** The example package, its products claimed by a specification that lies in the package; the pieces are bare steel. */
function ownPackage(): ReadonlyMap<string, Uint8Array> {
  const rows = exampleRows();
  const instrument = rows.instruments.map((row) => ({ ...row, resolution: 0.01 }));
  return packageFiles({
    rows: {
      ...rows,
      campaign: rows.campaign.map((row) => ({ ...row, campaign: code })),
      products: rows.products.map((row) => ({ ...row, specification: 'quay-rule', grade: null })),
      pieces: rows.pieces.map((row) => ({ ...row, gauged_over: 'bare steel' })),
      instruments: instrument,
      calibrations: rows.calibrations.map((row) => ({ ...row, due_on: '2099-01-01' })),
      pulls: rows.pulls.map((row) => ({ ...row, trace: null, panel_maximum_kN: 36.4, panel_uncertainty_kN: 0.2 })),
      photographs: [],
      zinc: [],
    },
    files: new Map([['specifications/of-the-quay.json', new TextEncoder().encode(JSON.stringify(ofCampaign))]]),
  });
}

/** Opens the correction of the first claim. */
const correctFirst = (page: Page) =>
  page
    .locator('.claim-keys')
    .getByRole('button', { name: /^Correct/ })
    .first()
    .click();

test('a reading is questioned by the own specification that a campaign brought with it, the one that it is judged by, and not by one of the bench', async () => {
  const finding = await judgeCampaign({ campaign: code }, bench.effects);
  const bar = finding.products[0]?.specification.limits.find(({ quantity }) => quantity === 'diameter');
  assert.deepEqual([bar?.lower, bar?.upper], [7.9, 8.1]);
  const { page, context, faults } = await sitDown({ browser, bench }, `/c/${code}/gauging/BIRCH-8-1`);
  await page.locator('.gauging-box').waitFor();
  await page.locator('.gauging-beside').getByText('7.9').waitFor();
  await page.keyboard.type('8.02');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-last').getByText('8.02').nth(1).waitFor();
  await page.keyboard.type('8.3');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-questions').getByText('8.3 mm is above its limit').waitFor();
  assert.match((await page.locator('.gauging-questions').textContent()) ?? '', /Quay rule/);
  assert.deepEqual(faults, []);
  await context.close();
});

test('Brief and drawings of a campaign go by its own specification', async () => {
  const { page, context, faults } = await sitDown({ browser, bench }, `/c/${code}/brief`);
  await correctFirst(page);
  const limits = page.getByRole('region', { name: 'What the Rulebook asks of it' });
  await limits.getByText('Quay rule, 8 mm').waitFor();
  await limits.getByText('7.9').first().waitFor();
  await page.goto(`${bench.address}/c/${code}/breaks/P-001`);
  await page.getByText('Drawn to the proportions of quay-rule').waitFor();
  await page.getByText('pitch 40 mm').waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});

test('a claim that is corrected to a specification of the bench takes it into the campaign, which is judged by it', async () => {
  const { page, context, faults } = await sitDown({ browser, bench }, `/c/${code}/brief`);
  await correctFirst(page);
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('radio', { name: /Shore rule/ }).check();
  await sheet.getByLabel('Why is it corrected?').fill('claimed by the other rule');
  await sheet.getByRole('button', { name: 'Keep the correction' }).click();
  await sheet.waitFor({ state: 'detached' });
  const finding = await judgeCampaign({ campaign: code }, bench.effects);
  const bar = finding.products[0]?.specification.limits.find(({ quantity }) => quantity === 'diameter');
  assert.deepEqual([bar?.lower, bar?.upper], [7.6, 8.4]);
  assert.deepEqual(faults, []);
  await context.close();
});
