import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import type { CampaignFinding } from '@provinghouse/contract';
import { type GaugingPlace, gaugingSchedule, placeKey } from '@provinghouse/core';
import { rowsOf } from '@provinghouse/service/entry';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { type EmptyBench, serveEmpty } from './empty-bench.ts';
import { field, fillIn } from './form-field.ts';
import { seeded } from './gauging-bench.ts';
import { readFinding } from './screens.ts';

/** One campaign from an empty record to its findings, by the screens alone, as the person at the bench does it. */

let bench: EmptyBench;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

const code = 'BRIDLES';
const products = [
  { product: 'ASH-8', supplier: 'Ash' },
  { product: 'BIRCH-8', supplier: 'Birch' },
  { product: 'CEDAR-8', supplier: 'Cedar' },
] as const;
const trace = (name: string) => new URL(`../../examples/sallow-reach/traces/${name}`, import.meta.url).pathname;

before(async () => {
  bench = await serveEmpty();
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(20_000);
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('dialog', (dialog) => void dialog.accept());
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

const press = (name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
const store = () => bench.effects.store;
const piecesOf = async () => (await rowsOf(store(), code, 'pieces')).map(({ piece }) => piece);

async function at(path: string, title: string | RegExp): Promise<void> {
  await page.goto(`${bench.address}${path}`);
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
}

const day = (by: number) => new Date(Date.now() + by * 86_400_000).toISOString().slice(0, 10);

async function addInstrument(typed: Readonly<Record<string, string>>, certificate: Readonly<Record<string, string>>) {
  await at('/kit', 'Kit');
  await fillIn(page, typed);
  await press('Keep the instrument');
  await page.getByRole('heading', { level: 1, name: typed['Short name, as on its label'] ?? '' }).waitFor();
  await fillIn(page, { ...certificate, 'Calibrated on': day(-30), 'Falls due on': day(300) });
  await press('Keep the certificate');
  await page.getByText(/in force, \d+ days left/).waitFor();
}

describe('one campaign, from nothing to its findings', { concurrency: false }, () => {
  test('the first visit offers a demo and a beginning; somebody says who is at the bench, and enters rig and calliper', async () => {
    await at('/', 'Campaigns');
    await page.getByRole('button', { name: 'Open the demo campaign' }).waitFor();
    await page.getByRole('button', { name: 'Who is it?' }).click();
    await field(page.getByRole('dialog'), 'Short name').fill('wren');
    await page.keyboard.press('Enter');
    await addInstrument(
      {
        'Short name, as on its label': 'RIG-1',
        'What it is': 'rig',
        'Unit it reads': 'kN',
        'Smallest step it shows': '0,01',
        'Verified from': '5',
        'Verified to': '100',
        'Class of ISO 7500-1 (rigs)': '1',
      },
      { 'Number of the certificate': 'C-1' },
    );
    await addInstrument(
      {
        'Short name, as on its label': 'CAL-1',
        'What it is': 'calliper',
        'Unit it reads': 'mm',
        'Smallest step it shows': '0,01',
      },
      { 'Number of the certificate': 'C-2', 'Expanded uncertainty': '0,02', 'Factor k it was stated with': '2' },
    );
    await addInstrument(
      {
        'Short name, as on its label': 'COAT-1',
        'What it is': 'coating gauge',
        'Unit it reads': 'um',
        'Smallest step it shows': '1',
      },
      { 'Number of the certificate': 'C-3', 'Expanded uncertainty': '3', 'Factor k it was stated with': '2' },
    );
  });

  test('the question, three claims, four pieces of each; samples received and cut; the plan frozen', async () => {
    await at('/new', 'New campaign');
    await fillIn(page, {
      Code: code,
      'Title of the finding': '8 mm chain for mooring bridles (invented)',
      Question: 'Which of these three is as strong as its mark says?',
    });
    await press('Open the campaign');
    await page.getByRole('heading', { level: 1, name: 'Brief' }).waitFor();
    for (const { product, supplier } of products) await addProduct(product, supplier);
    await at(`/c/${code}/samples`, 'Samples');
    for (const { product } of products) await receiveAndCut(product);
    await at(`/c/${code}/brief`, 'Brief');
    await fillIn(page, { 'Pieces of each product': '4' });
    await press('Draw a seed');
    await press('Keep the plan');
    await press('Freeze the plan');
    await fillIn(page.getByRole('dialog'), { 'On what was it agreed?': 'talked over at the quay (invented)' });
    await page.getByLabel(/are right as they stand/).check();
    await page.getByRole('dialog').getByRole('button', { name: 'Freeze the plan' }).click();
    await page.getByText(/^\s*Frozen 20/).waitFor();
    assert.equal((await piecesOf()).length, 12);
  });

  test('120 gauging readings are typed, one key beyond the digits each', async () => {
    await at(`/c/${code}/gauging`, 'Gauging');
    await page.getByLabel('Chosen here').check();
    await fillIn(page, { 'Links gauged on each piece': '2' });
    for (const other of ['inside width', 'outside width', 'length over links'])
      await page.getByLabel(other, { exact: true }).uncheck();
    await press('Use this');
    await page.getByText('120 places to read in all').waitFor();
    const [first] = await piecesOf();
    await at(`/c/${code}/gauging/${first}`, /./);
    await page.getByLabel('Instrument').selectOption('CAL-1');
    await page.locator('.gauging-box').focus();
    const next = seeded(20260309);
    const places = gaugingSchedule({ links: 5, linksToGauge: 2, quantities: ['diameter', 'weldDiameter', 'pitch'] });
    const typed = (await piecesOf()).flatMap((piece) =>
      places.map((place) => ({ piece, place, value: near(place, next()) })),
    );
    assert.equal(typed.length, 120);
    for (const { value } of typed) await page.keyboard.type(`${value.toFixed(2).replace('.', ',')}\n`);
    await page.getByText('Every place of every piece is read.').waitFor();
    await page.locator('.kept-done').waitFor({ timeout: 60_000 });
    const held = await rowsOf(store(), code, 'gauging');
    const key = (row: (typeof held)[number]) =>
      `${row.piece} ${placeKey({ ...row, position: row.position, quantity: row.quantity } as unknown as GaugingPlace)}`;
    const kept = new Map(held.map((row) => [key(row), row.value_mm]));
    assert.equal(kept.size, 120);
    for (const { piece, place, value } of typed) assert.equal(kept.get(`${piece} ${placeKey(place)}`), value);
  });

  test('twelve traces are dropped, looked at and kept, each with its piece', async () => {
    await at(`/c/${code}/pulls`, 'Pulls');
    for (const [index, piece] of (await piecesOf()).entries()) {
      const { product } = products[Math.floor(index / 4)] ?? products[0];
      // The third recording of Cedar has no units in its head; that case has its own test.
      const number = [1, 2, product === 'CEDAR-8' ? 5 : 3, 4][index % 4];
      const name = `${product.toLowerCase()}-${number}.csv`;
      await page.getByLabel('Choose files').setInputFiles(trace(name));
      await page.getByRole('listitem', { name }).locator('canvas').waitFor();
      await page.getByLabel('Piece', { exact: true }).selectOption(piece);
      await page.getByLabel('Rig', { exact: true }).selectOption('RIG-1');
      await page.getByLabel('When').fill(`${day(-1)}T10:${String(10 + index)}`);
      await page.locator('.pulls-stale:empty').waitFor({ state: 'attached' });
      await press('Accept as a pull');
      await page.getByText(`of ${piece} stands in the list below.`).waitFor();
    }
    assert.equal((await rowsOf(store(), code, 'pulls')).length, 12);
  });

  test('every break is read by keyboard, and every piece has its zinc', async () => {
    for (const { pull } of await rowsOf(store(), code, 'pulls')) {
      await at(`/c/${code}/breaks/${pull}`, /^Break of/);
      await page.getByRole('radio', { name: 'Link 3' }).waitFor();
      await page.keyboard.type('3ca');
      await page.getByRole('button', { name: 'Keep this reading' }).press('Enter');
      await page.getByRole('cell', { name: 'wren', exact: true }).waitFor();
    }
    const breaks = await rowsOf(store(), code, 'breaks');
    assert.equal(breaks.length, 12);
    assert.deepEqual(new Set(breaks.map(({ position }) => position)), new Set(['crown']));
    for (const piece of await piecesOf()) await readZinc(piece);
    assert.equal((await rowsOf(store(), code, 'zinc')).length, 12);
  });

  test('board and findings show what the record says, for every piece and product', async () => {
    const finding = await readFinding(bench.address, code);
    assert.equal(finding.pieces.filter(({ pull }) => pull?.use === 'value').length, 12);
    await at(`/c/${code}`, /8 mm chain/);
    for (const piece of await piecesOf()) await page.getByRole('link', { name: piece, exact: true }).waitFor();
    assert.equal(await page.getByText('not gauged').count(), 0);
    assert.equal(await page.getByText('not pulled').count(), 0);
    await at(`/c/${code}/findings`, 'Findings');
    for (const { product } of products) await page.getByText(product).first().waitFor();
    assert.ok(finding.comparisons[0]?.statistics, 'three products with four pieces each are compared');
    assert.deepEqual(faults, []);
  });

  test('a reading corrected with its reason moves the finding, and the ledger shows old and new', async () => {
    const [piece = ''] = await piecesOf();
    const before = meanDiameter(await readFinding(bench.address, code), piece);
    await at(`/c/${code}/gauging/${piece}`, /./);
    await page
      .getByRole('button', { name: /^Correct/ })
      .first()
      .click();
    const sheet = page.getByRole('dialog');
    const value = sheet.locator('input.number').first();
    const old = await value.inputValue();
    await value.fill(
      String(Number(old) + 0.1)
        .slice(0, 5)
        .replace('.', ','),
    );
    await fillIn(sheet, { 'Why is it corrected?': 'misread the second decimal' });
    await sheet.getByRole('button', { name: 'Keep the correction' }).click();
    await page.locator('dialog').waitFor({ state: 'detached' });
    assert.notEqual(meanDiameter(await readFinding(bench.address, code), piece), before);
    await at(`/c/${code}/ledger`, 'Ledger');
    await page.getByLabel('Search').fill('misread the second');
    const row = page.getByRole('row').filter({ hasText: 'misread the second decimal' });
    await row.locator('del').getByText(old, { exact: true }).waitFor();
    await page.getByText(/^The chain holds/).waitFor();
    assert.deepEqual(faults, []);
  });

  test('of two windows that correct one row the second is told, keeps what was typed, and may put it over', async () => {
    const other = await context.newPage();
    for (const one of [page, other]) {
      await one.goto(`${bench.address}/c/${code}/brief`);
      await one.getByRole('button', { name: 'Correct question and client' }).click();
      await field(one.getByRole('dialog'), 'Who asked').waitFor();
    }
    const correct = async (one: Page, client: string) => {
      await fillIn(one.getByRole('dialog'), { 'Who asked': client, 'Why is it corrected?': `asked ${client}` });
      await one.getByRole('dialog').getByRole('button', { name: 'Keep the correction' }).click();
    };
    await correct(page, 'the growers (invented)');
    await page.locator('dialog').waitFor({ state: 'detached' });
    await correct(other, 'the harbour (invented)');
    await other.getByText(/Your entry is not lost/).waitFor();
    await other.getByRole('dialog').getByRole('cell', { name: 'the growers (invented)' }).waitFor();
    await other.getByRole('button', { name: 'Keep mine over theirs' }).click();
    await other.locator('dialog').waitFor({ state: 'detached' });
    const [row] = await rowsOf(store(), code, 'campaign');
    assert.equal(row?.client, 'the harbour (invented)');
    await other.close();
    assert.deepEqual(faults, []);
  });
});

async function addProduct(product: string, supplier: string): Promise<void> {
  if ((await field(page, 'Code of the product').count()) === 0) await press('Add a product');
  await fillIn(page, { 'Code of the product': product, Supplier: supplier, 'Nominal size d': '8' });
  await page.getByRole('searchbox', { name: 'Search the Rulebook' }).fill('818-3');
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'What the Rulebook asks of it' }).getByText('at least 40.2').waitFor();
  await fillIn(page, { 'Price of one metre': '6,40', Currency: 'EUR' });
  await press('Keep the product');
  await page.getByRole('rowheader', { name: product }).first().waitFor();
}

async function receiveAndCut(product: string): Promise<void> {
  const sample = `${product}-S1`;
  if ((await field(page, 'Code of the sample').count()) === 0) await press('Receive a sample');
  await fillIn(page, { Product: product, 'Code of the sample': sample, 'Length received': '2,5' });
  await fillIn(page, { 'Mass of that length': '3,45', 'Where it is put': 'shelf 2' });
  await press('Receive it');
  await page.getByRole('region', { name: `Sample ${sample}` }).waitFor();
  await fillIn(page, { 'How many pieces': '4', 'Free links of each': '5', 'The callipers will touch': 'bare steel' });
  await press('Cut them');
  await page.getByText(new RegExp(`^Cut: ${sample}-1`)).waitFor();
}

/** A value that fits its place, to two decimals. */
function near({ quantity }: GaugingPlace, share: number): number {
  const middle = quantity === 'diameter' ? 8 : quantity === 'pitch' ? 24 : 8.4;
  return Math.round(100 * (middle + 0.16 * (share - 0.5))) / 100;
}

async function readZinc(piece: string): Promise<void> {
  await at(`/c/${code}/zinc/${piece}`, /./);
  const radio = page.locator('form.reading-form').getByRole('radio', { name: 'Link 1' });
  await radio.waitFor();
  await page.keyboard.type('2');
  await page.getByRole('button', { name: /^Keep, and go to the next link/ }).press('Enter');
  await page.getByRole('button', { name: 'Correct the adherence of link 1' }).waitFor();
}

function meanDiameter(finding: CampaignFinding, piece: string): number | null {
  return finding.pieces.find((one) => one.piece === piece)?.gauging?.meanDiameter_mm ?? null;
}
