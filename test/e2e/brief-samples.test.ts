import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { rowsOf } from '@provinghouse/service/entry';
import type { Browser, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import { type EmptyBench, serveEmpty } from './empty-bench.ts';
import { field, fillIn } from './form-field.ts';

let bench: EmptyBench;
let browser: Browser;

before(async () => {
  bench = await serveEmpty();
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

const who = 'wren';
const reason = 'agreed by telephone (invented)';

/** A page at the bench of somebody who has said who they are, and what went wrong in it. */
async function openPage(options: { readonly colorScheme?: 'light' | 'dark' } = {}) {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, ...options });
  await context.addInitScript((person: string) => localStorage.setItem('provinghouse-person', person), who);
  context.setDefaultTimeout(15_000);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  return { page, faults };
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
const inSheet = (page: Page, name: string) => page.getByRole('dialog').getByRole('button', { name }).click();

async function at(page: Page, path: string, title: string): Promise<void> {
  await page.goto(`${bench.address}${path}`);
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
}

const brief = {
  'Title of the finding': '8 mm chain for the quay',
  Question: 'Is this chain as strong as its mark says?',
  'Who asked': 'The harbour office (invented)',
};

async function openCampaign(page: Page, code: string, isBlind = false): Promise<void> {
  await at(page, '/new', 'New campaign');
  await fillIn(page, { Code: code, ...brief });
  if (isBlind) await page.getByRole('radio', { name: /^Blind/ }).check();
  await press(page, 'Open the campaign');
  await page.getByRole('heading', { level: 1, name: 'Brief' }).waitFor();
}

async function addProduct(page: Page, product: string, supplier: string): Promise<void> {
  if ((await field(page, 'Code of the product').count()) === 0) await press(page, 'Add a product');
  await fillIn(page, { 'Code of the product': product, Supplier: supplier, 'Nominal size d': '8' });
  await page.getByRole('searchbox', { name: 'Search the Rulebook' }).fill('818-3');
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'What the Rulebook asks of it' }).getByText('at least 40.2').waitFor();
  await fillIn(page, { 'Price of one metre': '6,40', Currency: 'EUR' });
  await page.getByRole('button', { name: 'Keep the product' }).dblclick();
  await page.getByRole('rowheader', { name: product }).first().waitFor();
}

async function planAndFreeze(page: Page): Promise<void> {
  await fillIn(page, { 'Pieces of each product': '2' });
  await press(page, 'Draw a seed');
  await press(page, 'Keep the plan');
  await freeze(page);
}

async function freeze(page: Page): Promise<void> {
  await press(page, 'Freeze the plan');
  await inSheet(page, 'Freeze the plan');
  await page.getByText('Say on what the plan was agreed.').waitFor();
  await fillIn(page.getByRole('dialog'), { 'On what was it agreed?': reason });
  await page.getByLabel(/are right as they stand/).check();
  await inSheet(page, 'Freeze the plan');
  await page.getByText(/^\s*Frozen 20/).waitFor();
}

interface Received {
  readonly product: string;
  readonly sample: string;
}

async function receive(page: Page, { product, sample }: Received): Promise<void> {
  if ((await field(page, 'Code of the sample').count()) === 0) await press(page, 'Receive a sample');
  await fillIn(page, { Product: product, 'Code of the sample': sample, 'Length received': '2,5' });
  await fillIn(page, { 'Mass of that length': '3,45', 'Where it is put': 'shelf 2' });
  await page.getByRole('button', { name: 'Receive it' }).dblclick();
  await page.getByRole('region', { name: `Sample ${sample}` }).waitFor();
}

async function cut(page: Page, count: string): Promise<void> {
  await fillIn(page, { 'How many pieces': count, 'Free links of each': '5', 'The callipers will touch': 'zinc' });
  const told = page.getByText(/^Cut: /);
  const before = (await told.count()) === 0 ? null : await told.first().textContent();
  await page.getByRole('button', { name: 'Cut them' }).dblclick();
  await (before === null ? told : told.filter({ hasNotText: before })).first().waitFor();
}

describe('a campaign from nothing', () => {
  test('wrong entries are told at their fields, and a reload loses nothing that was typed', async () => {
    const { page, faults } = await openPage();
    await at(page, '/new', 'New campaign');
    await press(page, 'Open the campaign');
    assert.equal(await field(page, 'Code').evaluate((one) => one === document.activeElement), true);
    await fillIn(page, { Code: 'two words', ...brief, 'Least table speed': '60', 'Greatest table speed': '10,5' });
    await press(page, 'Open the campaign');
    await page.getByText(/it must be one to 64 letters/).waitFor();
    await fillIn(page, { Code: 'FAULTS-1' });
    await press(page, 'Open the campaign');
    await page.getByText(/must not be less than/).waitFor();
    await page.reload();
    assert.equal(await field(page, 'Question').inputValue(), brief.Question);
    await fillIn(page, { 'Greatest table speed': '90' });
    await press(page, 'Open the campaign');
    await page.getByRole('heading', { level: 1, name: 'Brief' }).waitFor();
    await at(page, '/new', 'New campaign');
    assert.equal(await field(page, 'Question').inputValue(), '', 'what was kept is no draft any more');
    await fillIn(page, { Code: 'faults-1', ...brief });
    await press(page, 'Open the campaign');
    await page.getByText('The record holds a campaign FAULTS-1 already. Choose another code.').waitFor();
    assert.deepEqual(faults, []);
    await page.context().close();
  });

  test('a keyboard alone opens a campaign', async () => {
    const { page, faults } = await openPage();
    await at(page, '/new', 'New campaign');
    const to = async (control: ReturnType<typeof field>) => {
      for (let presses = 0; presses < 40; presses += 1) {
        if (await control.evaluate((one) => one === document.activeElement)) return;
        await page.keyboard.press('Tab');
      }
      assert.fail('Tab never reaches the field');
    };
    await to(field(page, 'Code'));
    await page.keyboard.type('KEYS-1');
    await to(field(page, 'Title of the finding'));
    await page.keyboard.type('By keyboard');
    await to(field(page, 'Question'));
    await page.keyboard.type(brief.Question);
    await to(page.getByRole('radio', { name: /^Guarded/ }));
    await page.keyboard.press('ArrowDown');
    await to(field(page, 'Coverage factor k'));
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Brief' }).waitFor();
    const [campaign] = await rowsOf(bench.effects.store, 'KEYS-1', 'campaign');
    assert.equal(campaign?.decision_rule, 'simple acceptance');
    assert.deepEqual(faults, []);
    await page.context().close();
  });

  test('claims, plan, freeze, amendment; samples, pieces, labels, moves', async () => {
    const { page, faults } = await openPage();
    await openCampaign(page, 'QUAY-1');
    await addProduct(page, 'ASH-8', 'Ash');
    await addProduct(page, 'BIRCH-8', 'Birch');
    await planAndFreeze(page);
    const products = await rowsOf(bench.effects.store, 'QUAY-1', 'products');
    assert.deepEqual(
      products.map(({ product, price_per_metre, grade }) => [product, price_per_metre, grade]),
      [
        ['ASH-8', 6.4, '4'],
        ['BIRCH-8', 6.4, '4'],
      ],
    );
    await press(page, 'Correct question and client');
    await fillIn(page.getByRole('dialog'), { 'Who asked': 'The quay board (invented)' });
    await fillIn(page.getByRole('dialog'), { 'Why is it corrected?': 'the office was renamed' });
    await inSheet(page, 'Keep the correction');
    const amendments = page.getByRole('region', { name: 'Amendments' });
    await amendments.getByRole('cell', { name: 'the office was renamed' }).waitFor();

    await at(page, '/c/QUAY-1/samples', 'Samples');
    await receive(page, { product: 'ASH-8', sample: 'ASH-8-S1' });
    await cut(page, '2');
    await cut(page, '1');
    const pieces = await rowsOf(bench.effects.store, 'QUAY-1', 'pieces');
    assert.deepEqual(
      pieces.map(({ piece, links, gauged_over }) => [piece, links, gauged_over]),
      [1, 2, 3].map((number) => [`ASH-8-S1-${number}`, 5, 'zinc']),
    );
    const href = await page.getByRole('link', { name: 'Print labels (PDF)' }).getAttribute('href');
    const labels = await page.request.get(`${bench.address}${href}`);
    assert.equal(labels.headers()['content-type'], 'application/pdf');
    assert.equal((await labels.body()).subarray(0, 5).toString(), '%PDF-');
    await page.getByRole('link', { name: 'ASH-8-S1-2' }).click();
    await page.getByRole('heading', { level: 1, name: /ASH-8-S1-2/ }).waitFor();
    await page.goBack();
    await page.getByRole('region', { name: 'Sample ASH-8-S1' }).waitFor();
    assert.deepEqual(faults, []);
    await page.context().close();
  });

  test('a sample that is lent and not back stands at the top until it is; a photograph is kept as it was taken', async () => {
    const { page, faults } = await openPage();
    await at(page, '/c/QUAY-1/samples?sample=ASH-8-S1', 'Samples');
    await press(page, 'Move it');
    await fillIn(page, { 'Where to': 'the zinc laboratory (invented)', 'Back by': '2026-01-20' });
    await press(page, 'Enter the move');
    await page.getByText(/is before the move/).waitFor();
    await fillIn(page, { When: '2026-01-10T09:00' });
    await press(page, 'Enter the move');
    const alerts = page.getByRole('region', { name: 'Look at these' });
    await alerts.getByText(/overdue by \d+ days/).waitFor();
    await press(page, 'Move it');
    await fillIn(page, { 'Where to': 'shelf 2' });
    await press(page, 'Enter the move');
    await alerts.waitFor({ state: 'detached' });
    const taken = await page.screenshot();
    const file = { name: 'a.png', mimeType: 'image/png', buffer: taken };
    await page.locator('input[type=file]').setInputFiles(file);
    const picture = page.locator('.photographs img').first();
    await picture.waitFor();
    const shown = await page.request.get(`${bench.address}${await picture.getAttribute('src')}`);
    assert.ok((await shown.body()).equals(taken));
    await page.locator('input[type=file]').setInputFiles({ ...file, name: 'a.txt', mimeType: 'text/plain' });
    await page.getByText(/“a.txt” is no picture/).waitFor();
    assert.deepEqual(faults, []);
    await page.context().close();
  });

  test('a connection lost in the middle of receiving loses nothing and enters it once', async () => {
    const { page } = await openPage();
    await at(page, '/c/QUAY-1/samples', 'Samples');
    await page.route('**/records', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()));
    await press(page, 'Receive a sample');
    await fillIn(page, { Product: 'BIRCH-8', 'Code of the sample': 'BIRCH-8-S1', 'Where it is put': 'shelf 3' });
    await press(page, 'Receive it');
    await page.getByText(/The server does not answer. 1 entry waits/).waitFor();
    await page.unroute('**/records');
    await page.getByRole('region', { name: 'Sample BIRCH-8-S1' }).waitFor();
    const samples = await rowsOf(bench.effects.store, 'QUAY-1', 'samples');
    assert.deepEqual(
      samples.map(({ sample, received_by }) => [sample, received_by]),
      [
        ['ASH-8-S1', who],
        ['BIRCH-8-S1', who],
      ],
    );
    await page.context().close();
  });
});

/** A rule of a lab's own, as a data file; invented. */
const ownRule = {
  id: 'Mooring bridle rule',
  title: 'Bridle chain of the co-operative (invented)',
  edition: '2026-01',
  range: [6, 16],
  confidence: 'A',
  confidenceWhy: 'our own',
  sources: { own: { kind: 'own', citation: 'Rule of the co-operative, sheet 3 (invented)' } },
  rules: [
    {
      id: 'bf',
      quantity: 'breakingForceMin',
      statement: 'grade 40',
      js: '(Math.PI / 2) * d * d * 400 / 1000',
      sources: ['own'],
      crossChecked: false,
    },
  ],
};

test('an own specification goes into the campaign with the product that is judged by it', async () => {
  const { page, faults } = await openPage();
  const rule = JSON.stringify([ownRule]);
  await page.context().addInitScript((held: string) => {
    sessionStorage.setItem('provinghouse.own-specifications', held);
  }, rule);
  await openCampaign(page, 'OWN-1');
  await fillIn(page, { 'Code of the product': 'ASH-8', Supplier: 'Ash', 'Nominal size d': '8' });
  await page.getByRole('searchbox', { name: 'Search the Rulebook' }).fill('bridle');
  await page.keyboard.press('Enter');
  await press(page, 'Keep the product');
  await page.getByRole('region', { name: 'Rules that apply' }).getByText('at least 40.2').waitFor();
  const held = await page.request.get(
    `${bench.address}/api/campaigns/OWN-1/files/specifications/mooring-bridle-rule.json`,
  );
  assert.equal((await held.json()).title, ownRule.title);
  assert.deepEqual(faults, []);
  await page.context().close();
});

test('from the freeze to the unblinding a blind campaign names nobody, and its pieces carry drawn codes', async () => {
  const { page, faults } = await openPage();
  await openCampaign(page, 'BLIND-1', true);
  await addProduct(page, 'ASH-8', 'Ash');
  await at(page, '/c/BLIND-1/samples', 'Samples');
  await receive(page, { product: 'ASH-8', sample: 'ASH-8-S1' });
  await cut(page, '2');
  const pieces = await rowsOf(bench.effects.store, 'BLIND-1', 'pieces');
  for (const { piece } of pieces) assert.match(piece, /^[CDFHJKMNPRTWXY3479]{4}$/);
  await at(page, '/c/BLIND-1/brief', 'Brief');
  await planAndFreeze(page);
  for (const [path, title] of [
    ['/c/BLIND-1/brief', 'Brief'],
    ['/c/BLIND-1/samples', 'Samples'],
  ] as const) {
    await at(page, path, title);
    await page.getByText('Product A').first().waitFor();
    await page.waitForLoadState('networkidle');
    assert.doesNotMatch((await page.locator('main').textContent()) ?? '', /\bash/i, path);
  }
  await page.getByText(/This campaign is blind now/).waitFor();
  assert.equal(await page.getByRole('button', { name: 'Receive a sample' }).count(), 0);
  await cut(page, '1');
  await at(page, '/c/BLIND-1/brief', 'Brief');
  await press(page, 'Unblind the campaign');
  await fillIn(page.getByRole('dialog'), { 'Why now?': 'a trial (invented)' });
  await inSheet(page, 'Unblind the campaign');
  await page.getByRole('rowheader', { name: /Ash/ }).first().waitFor();
  assert.deepEqual(faults, []);
  await page.context().close();
});

test('in a blind campaign a sample is moved, photographed and its pieces corrected by its neutral name, and all of it stands under its real one afterwards', async () => {
  const { page, faults } = await openPage();
  const code = 'BLIND-2';
  await openCampaign(page, code, true);
  await addProduct(page, 'ASH-8', 'Ash');
  await at(page, `/c/${code}/samples`, 'Samples');
  await receive(page, { product: 'ASH-8', sample: 'ASH-8-S1' });
  await cut(page, '1');
  const photograph = async (width: number) => {
    const before = await page.locator('.photographs img').count();
    const buffer = await page.screenshot({ clip: { x: 0, y: 0, width, height: 40 } });
    await page.locator('input[type=file]').setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer });
    await page.locator('.photographs img').nth(before).waitFor();
  };
  await photograph(40);
  await at(page, `/c/${code}/brief`, 'Brief');
  await planAndFreeze(page);

  await at(page, `/c/${code}/samples`, 'Samples');
  await page.getByRole('region', { name: 'Sample Product A, sample 1' }).waitFor();
  await page.getByText('No photograph of it yet.').waitFor();
  await page.getByText(/Those from before the freeze are shown after the unblinding/).waitFor();
  await photograph(60);
  await press(page, 'Move it');
  await fillIn(page, { 'Where to': 'the saw' });
  await press(page, 'Enter the move');
  await page.getByRole('cell', { name: 'the saw', exact: true }).waitFor();
  await press(page, 'Correct move 2');
  await fillIn(page.getByRole('dialog'), { 'Where to': 'the rig', 'Why is it corrected?': reason });
  await inSheet(page, 'Keep the correction');
  await page.getByRole('cell', { name: 'the rig', exact: true }).waitFor();
  await press(page, /^Correct piece/);
  await fillIn(page.getByRole('dialog'), { 'Free links of each': '7', 'Why is it corrected?': reason });
  await inSheet(page, 'Keep the correction');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  assert.doesNotMatch((await page.locator('body').textContent()) ?? '', /ash/i);

  await at(page, `/c/${code}/brief`, 'Brief');
  await press(page, 'Unblind the campaign');
  await fillIn(page.getByRole('dialog'), { 'Why now?': 'a trial (invented)' });
  await inSheet(page, 'Unblind the campaign');
  await page.getByRole('rowheader', { name: /Ash/ }).first().waitFor();
  await at(page, `/c/${code}/samples?sample=ASH-8-S1`, 'Samples');
  await page.getByRole('region', { name: 'Sample ASH-8-S1' }).waitFor();
  await page.getByRole('table', { name: 'Moves of the sample' }).getByRole('cell', { name: 'the rig' }).waitFor();
  await page.locator('.photographs img').nth(1).waitFor();
  const { store } = bench.effects;
  const [custody, pictures, pieces] = [
    await rowsOf(store, code, 'custody'),
    await rowsOf(store, code, 'photographs'),
    await rowsOf(store, code, 'pieces'),
  ];
  for (const row of [...custody, ...pictures, ...pieces]) assert.equal(row.sample, 'ASH-8-S1');
  assert.deepEqual([custody.length, pictures.length, pieces[0]?.links], [2, 2, 7]);
  assert.deepEqual(faults, []);
  await page.context().close();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing on a ${colorScheme} ground, in the forms, their faults and the sheets over them`, async () => {
    const { page } = await openPage({ colorScheme });
    const audit = async (where: string) => {
      await page.waitForLoadState('networkidle');
      assert.deepEqual(await violations(page), [], where);
    };
    await at(page, '/new', 'New campaign');
    await press(page, 'Open the campaign');
    await audit('new campaign with faults');
    await openCampaign(page, `AXE-${colorScheme}`);
    await press(page, 'Keep the product');
    await audit('empty brief with faults');
    await press(page, 'Correct the rule');
    await audit('correction of the rule');
    await at(page, `/c/AXE-${colorScheme}/samples`, 'Samples');
    await audit('samples without products');
    await at(page, '/c/QUAY-1/brief', 'Brief');
    await audit('frozen brief');
    await at(page, '/c/QUAY-1/samples?sample=ASH-8-S1', 'Samples');
    await press(page, 'Receive a sample');
    await press(page, 'Receive it');
    await press(page, 'Move it');
    await audit('samples with forms open');
    await page.context().close();
  });
}
