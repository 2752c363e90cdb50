import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import { compareSpecifications, parseOwnStandard, specificationFor } from '@provinghouse/core';
import type { Browser, Locator, Page } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { type DemoServer, serveDemo } from './demo-server.ts';

interface PublishedTable {
  readonly id: string;
  readonly rows: readonly Readonly<Record<string, number>>[];
}

let server: DemoServer;
let browser: Browser;
let rulebook: {
  readonly standards: readonly { readonly id: string; readonly tables: readonly PublishedTable[] }[];
  readonly sources: Readonly<Record<string, { readonly url?: string }>>;
};

before(async () => {
  const file = new URL('../../packages/core/src/chain/tables/chain-standards.json', import.meta.url);
  rulebook = JSON.parse(readFileSync(file, 'utf8'));
  server = await serveDemo();
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await server?.close();
});

/** What stands there, as text. */
async function words(at: Locator): Promise<string> {
  return (await at.textContent()) ?? '';
}

async function open(path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
  const page = await context.newPage();
  await page.goto(`${server.address}${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return page;
}

function published(standard: string, table: string, size_mm: number): Readonly<Record<string, number>> {
  const row = rulebook.standards
    .find(({ id }) => id === standard)
    ?.tables.find(({ id }) => id === table)
    ?.rows.find(({ d }) => d === size_mm);
  assert.ok(row, `${standard} ${table} ${size_mm}`);
  return row;
}

const ofEn818 = '/rulebook/specification?of=en-818-3~4~8';

test('what is typed narrows the list to the published row, and the address holds the search', async () => {
  const page = await open('/rulebook');
  await page.keyboard.press('f');
  await page.keyboard.type('EN 818');
  await page.getByRole('textbox', { name: 'Grade' }).fill('M');
  await page.getByRole('textbox', { name: 'Size' }).fill('8 mm');
  const rows = page.locator('.found tbody tr:has(td)');
  await page
    .getByRole('status')
    .getByText(/^1 of /)
    .waitFor();
  assert.equal(await rows.count(), 1);
  const force = published('EN 818-3', 'loads', 8).breakingForce;
  assert.match((await words(rows.first())).replaceAll('\u00a0', ' '), new RegExp(`at least ${force} kN`));
  await page.waitForURL(/words=EN%20818&grade=M&size=8%20mm/);
  await page.getByRole('link', { name: 'EN 818-3, grade 4, 8 mm', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'EN 818-3, grade 4, 8 mm' }).waitFor();
  await page.goBack();
  await page
    .getByRole('status')
    .getByText(/^1 of /)
    .waitFor();
  assert.equal(await page.getByRole('textbox', { name: 'Size' }).inputValue(), '8 mm');
  await page.context().close();
});

test('a search that finds nothing says what to leave out, and is cleared with one press', async () => {
  const page = await open('/rulebook?words=EN&size=8.7&grade=3');
  await page.getByText('No specification answers this search.').waitFor();
  await page.getByRole('button', { name: 'Clear the search' }).click();
  await page.locator('.found tbody tr:has(td)').first().waitFor();
  await page.context().close();
});

test('a specification shows every limit with its marks, and what each source is', async () => {
  const page = await open(ofEn818);
  const { limits } = specificationFor({ standard: 'en-818-3', size_mm: 8 });
  const rows = page.locator('.limits tbody tr');
  assert.equal(await rows.count(), limits.length);
  for (const [index, limit] of limits.entries()) {
    const read = await words(rows.nth(index));
    for (const flag of limit.provenance.flags.filter((one) => one === 'memory')) assert.match(read, new RegExp(flag));
  }
  const sources = await page.locator('.rulebook-sources li').allInnerTexts();
  for (const { text } of limits.flatMap(({ provenance }) => provenance.citations))
    assert.ok(
      sources.some((source) => source.includes(text)),
      text,
    );
  await rows.first().getByRole('button').first().click();
  await page.getByRole('dialog').getByRole('list', { name: 'Where the limit was read' }).waitFor();
  await page.context().close();
});

test('no address of a source comes on screen: many name a supplier', async () => {
  const hosts = Object.values(rulebook.sources).flatMap(({ url }) => (url === undefined ? [] : [new URL(url).host]));
  assert.ok(hosts.length > 10);
  for (const path of [
    ofEn818,
    '/rulebook/specification?of=din-766~3~8',
    '/rulebook?words=din',
    '/rulebook/own?from=din-766~3~8',
  ]) {
    const page = await open(path);
    for (const opens of await page.locator('.limits .opens').all()) {
      await opens.press('Enter');
      await page.locator('[role="dialog"]:focus').waitFor();
      const read = await words(page.locator('body'));
      assert.ok(!hosts.some((host) => read.includes(host)) && !/https?:/.test(read), path);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'hidden' });
    }
    const read = await words(page.locator('body'));
    assert.ok(!hosts.some((host) => read.includes(host)) && !/https?:/.test(read), path);
    await page.context().close();
  }
});

test('two specifications stand side by side, each difference with a shape and a word', async () => {
  const page = await open('/rulebook');
  await page.getByRole('textbox', { name: 'Size' }).fill('8');
  await page.getByRole('link', { name: 'Compare EN 818-3, grade 4, 8 mm with another' }).click();
  await page.getByText('Choose what EN 818-3, grade 4, 8 mm is to be compared with.').waitFor();
  await page.getByRole('searchbox', { name: 'Name or words' }).fill('DIN 766');
  await page.getByRole('link', { name: 'Compare with DIN 766, grade 3, 8 mm' }).click();
  await page.getByRole('heading', { level: 1, name: 'Side by side' }).waitFor();
  const expected = compareSpecifications(
    specificationFor({ standard: 'en-818-3', size_mm: 8 }),
    specificationFor({ standard: 'din-766', size_mm: 8 }),
  );
  const rows = page.locator('.compared tbody tr');
  assert.equal(await rows.count(), expected.length);
  for (const row of await rows.all()) {
    assert.equal(await row.locator('.relation svg').count(), 1);
    assert.match(await words(row.locator('.relation')), /\w/);
  }
  const [din, en] = [published('DIN 766', 'loads', 8).breakingForce, published('EN 818-3', 'loads', 8).breakingForce];
  assert.ok(din !== undefined && en !== undefined && din < en);
  const force = rows.filter({ has: page.getByRole('rowheader', { name: 'breaking force' }) });
  assert.match(await words(force), new RegExp(`lower by ${Number((100 * (1 - din / en)).toPrecision(2))}\\s%`));
  await page.getByLabel('Only where they differ').check();
  await page.waitForURL(/only=differences/);
  assert.equal(await rows.count(), expected.filter(({ relation }) => relation !== 'same').length);
  await page.context().close();
});

test('specifications of different sizes are compared freed of the size as well', async () => {
  const page = await open('/rulebook/compare?first=grade-definition~40~8&second=grade-definition~40~13');
  const row = page
    .locator('.compared tbody tr')
    .filter({ has: page.getByRole('rowheader', { name: 'breaking force' }) });
  assert.match(await words(row), /higher by/);
  assert.match(await words(row), /400\sN\/mm² against 400\sN\/mm²\s*the same/);
  await page.context().close();
});

test('an own specification says where each change comes from, is downloaded and stands beside the published ones', async () => {
  const page = await open(ofEn818);
  await page.getByRole('link', { name: 'Make an own specification from it' }).click();
  await page.getByRole('heading', { level: 1, name: 'Own specification' }).waitFor();
  await page.locator('[name="name"]').fill('Bridle rule 8');
  await page.locator('[name="title"]').fill('Bridle chain (invented)');
  await page.locator('[name="edition"]').fill('2026-01');
  await page.getByText('It is sound:').waitFor();
  const higher = (published('EN 818-3', 'loads', 8).breakingForce ?? 0) + 4.5;
  await page.locator('[name="breakingForce.lower"]').fill(String(higher).replace('.', ','));
  await page.getByText('say where the change comes from').first().waitFor();
  assert.equal(await page.getByRole('button', { name: 'Download the file' }).count(), 0);
  await page.locator('[name="breakingForce.source"]').fill('Order 12 (invented)');
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download the file' }).click();
  const file = await (await coming).path();
  const own = [parseOwnStandard(JSON.parse(await readFile(file, 'utf8')), 'downloaded')];
  const { limits } = specificationFor({ standard: 'bridle-rule-8', size_mm: 8, own });
  const force = limits.find(({ quantity }) => quantity === 'breakingForce');
  assert.equal(force?.lower, higher);
  assert.deepEqual(
    force?.provenance.citations.map(({ text }) => text),
    ['Order 12 (invented)'],
  );
  await page.getByRole('button', { name: 'Show it beside the published ones' }).click();
  await page.getByText('It stands beside the published ones').getByRole('link').click();
  await page.getByRole('link', { name: 'Bridle rule 8, grade 4, 8 mm', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Bridle rule 8, grade 4, 8 mm' }).waitFor();
  await page.reload();
  await page.getByRole('heading', { level: 1, name: 'Bridle rule 8, grade 4, 8 mm' }).waitFor();
  await page.context().close();
});

test('the form of an own specification survives the page being loaded again', async () => {
  const page = await open('/rulebook/own?from=en-818-3~4~8');
  await page.locator('[name="pitch.upper"]').fill('24,9');
  await page.locator('[name="pitch.source"]').fill('drawing 3 (invented)');
  await page.waitForURL(/pitch\.source=/);
  await page.reload();
  assert.equal(await page.locator('[name="pitch.upper"]').inputValue(), '24,9');
  assert.equal(await page.locator('[name="pitch.source"]').inputValue(), 'drawing 3 (invented)');
  await page.context().close();
});

test('a file that is no specification is refused with every fault in words', async () => {
  const page = await open('/rulebook');
  const bring = page.getByLabel('Choose a specification file (JSON)');
  await bring.setInputFiles({ name: 'note.txt', mimeType: 'text/plain', buffer: Buffer.from('hello') });
  await page.getByRole('alert').getByText('It is not a JSON file.').waitFor();
  await bring.setInputFiles({
    name: 'rule.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"id": "EN 818-3"}'),
  });
  await page.getByRole('alert').getByText('is a published standard').waitFor();
  assert.ok((await page.getByRole('alert').getByRole('listitem').count()) > 3);
  await page.context().close();
});

test('an address that names nothing in the rulebook says what to do', async () => {
  const page = await open('/rulebook/specification?of=en-999~4~8');
  await page.getByRole('heading', { level: 1, name: 'This specification is not in the rulebook' }).waitFor();
  await page.getByRole('link', { name: 'To the search' }).click();
  await page.getByRole('heading', { level: 1, name: 'Rulebook' }).waitFor();
  await page.context().close();
});
