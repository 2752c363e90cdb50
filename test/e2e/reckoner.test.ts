import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { calculations, reckon } from '@provinghouse/core';
import type { Browser, Locator, Page } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { type DemoServer, serveDemo } from './demo-server.ts';

interface WorkedExample {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: number;
}

interface PublishedTable {
  readonly id: string;
  readonly rows: readonly Readonly<Record<string, number>>[];
}

/** How many calculations an address can hold. */
const longestSheet = 12;

let server: DemoServer;
let browser: Browser;
let examples: readonly WorkedExample[];
let tables: readonly { readonly id: string; readonly tables: readonly PublishedTable[] }[];

const core = new URL('../../packages/core/', import.meta.url);
const readJson = (path: string) => JSON.parse(readFileSync(new URL(path, core), 'utf8'));

before(async () => {
  examples = readJson('test/reference/coating-checks.json').checks;
  tables = readJson('src/chain/tables/chain-standards.json').standards;
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

async function open(query = ''): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${server.address}/reckoner${query}`);
  await page.getByRole('heading', { level: 1, name: 'Reckoner' }).waitFor();
  return page;
}

function example(id: string): WorkedExample {
  const found = examples.find((one) => one.id === id);
  assert.ok(found, id);
  return found;
}

/** What a result shows, as a number. */
async function shown(page: Page, key: string, step = 1): Promise<number> {
  const read = await words(page.locator(`[data-step="${step}"] output[name="${key}"]`));
  return Number.parseFloat(read.replace('\u2212', '-'));
}

const entry = (page: Page, key: string, step = 1) => page.locator(`[data-step="${step}"] [name="${key}"]`);

function rowOf8mm(): Readonly<Record<string, number>> {
  const row = tables
    .find(({ id }) => id === 'EN 818-3')
    ?.tables.find(({ id }) => id === 'loads')
    ?.rows.find(({ d }) => d === 8);
  assert.ok(row);
  return row;
}

test('a worked example typed by keyboard alone gives the published figures, live', async () => {
  const { inputs, expected, tolerance } = example('GRADE-1');
  const page = await open();
  await page.keyboard.press('f');
  await page.keyboard.type('amounts');
  await page.keyboard.press('Enter');
  await entry(page, 'force_kN').and(page.locator(':focus')).waitFor();
  await page.keyboard.type(String(inputs.breaking_force_kN));
  await page.keyboard.press('Tab');
  await page.keyboard.type(String(inputs.d_mm));
  assert.ok(Math.abs((await shown(page, 'grade')) - (expected.grade_value ?? Number.NaN)) <= tolerance);
  assert.ok(Math.abs((await shown(page, 'stress_N_per_mm2')) - (expected.stress_MPa ?? Number.NaN)) <= tolerance);
  await page.close();
});

test('the address holds every entry: opened anew, with a decimal comma, it gives the same result', async () => {
  const { inputs, expected, tolerance } = example('LINK-GEO-6x18.5');
  const page = await open('?1=link-mass');
  await entry(page, 'size_mm').fill(String(inputs.d_mm));
  await entry(page, 'pitch_mm').fill(String(inputs.pitch_inside_length_mm).replace('.', ','));
  await entry(page, 'innerWidth_mm').fill(String(inputs.inside_width_mm).replace('.', ','));
  await page.waitForURL(/1\.innerWidth_mm=/);
  const other = await browser.newPage();
  await other.goto(page.url());
  await other.locator('output[name="linkMass_kg"]').waitFor();
  const mass = await shown(other, 'linkMass_kg');
  assert.ok(Math.abs(mass - (expected.link_mass_kg ?? Number.NaN)) <= tolerance, `${mass}`);
  assert.equal(await entry(other, 'pitch_mm').inputValue(), await entry(page, 'pitch_mm').inputValue());
  await other.close();
  await page.close();
});

test('every calculation shows for its example what core gives, several on one sheet', async () => {
  const page = await open();
  for (let from = 0; from < calculations.length; from += longestSheet) {
    const sheet = calculations.slice(from, from + longestSheet);
    const query = sheet.flatMap(({ name, example: values }, index) => [
      `${index + 1}=${name}`,
      ...Object.entries(values).map(([key, value]) => `${index + 1}.${key}=${value}`),
    ]);
    await page.goto(`${server.address}/reckoner?${query.join('&')}`);
    await page.locator(`[data-step="${sheet.length}"]`).waitFor();
    for (const [index, { name, example: values, outputs }] of sheet.entries()) {
      const given = reckon(name, values).outputs;
      for (const { key } of outputs) {
        const value = given[key];
        if (typeof value !== 'number' || value === 0) continue;
        const read = await shown(page, key, index + 1);
        assert.ok(Math.abs(read / value - 1) < 1e-5, `${name}: ${key} shows ${read}, core gives ${value}`);
      }
    }
  }
  await page.close();
});

test('the chain at hand fills the limit, and a result sent on follows its own entries', async () => {
  const row = rowOf8mm();
  const page = await open('?1=force-uncertainty&1.force_kN=41,2&1.class=1&1.resolution_kN=0,02');
  await page.getByRole('combobox', { name: 'Specification' }).selectOption('en-818-3');
  await page.locator('summary[aria-label^="Send expanded uncertainty"]').click();
  await page
    .locator('details[open]')
    .getByRole('button', { name: /^Acceptance limit with a guard band.*: U = k u/ })
    .click();
  await entry(page, 'lowerLimit', 2).waitFor();
  assert.equal(Number(await entry(page, 'lowerLimit', 2).inputValue()), row.breakingForce);
  const before = await shown(page, 'lowerAcceptance', 2);
  const uncertainty = await shown(page, 'expandedUncertainty_kN', 1);
  assert.ok(Math.abs(before - (row.breakingForce ?? 0) - uncertainty) < 1e-3);
  await entry(page, 'resolution_kN', 1).fill('1');
  assert.ok((await shown(page, 'lowerAcceptance', 2)) > before);
  await page.close();
});

test('a wrong entry is told at its field with the cure, and no result stays', async () => {
  const page = await open('?1=nominal-area&1.size_mm=8');
  assert.ok((await shown(page, 'area_mm2')) > 0);
  for (const [typed, told] of [
    ['eight', /must be a number in mm/],
    ['1.000,5', /must be a number/],
    ['-8', /must be above 0/],
    ['0', /must be above 0/],
  ] as const) {
    await entry(page, 'size_mm').fill(typed);
    const field = page.locator('.form-field', { has: page.locator('[name="size_mm"]') });
    assert.match(await words(field), told, typed);
    assert.equal(await entry(page, 'size_mm').getAttribute('aria-invalid'), 'true');
    assert.ok(Number.isNaN(await shown(page, 'area_mm2')));
  }
  await entry(page, 'size_mm').fill('');
  await page.getByText('Still needed: nominal size of the chain.').waitFor();
  await page.close();
});

test('a value stays from one calculation to the next, and the back button goes back', async () => {
  const page = await open('?1=mean-stress&1.force_kN=33,2');
  await entry(page, 'area_mm2').fill('102');
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('f');
  await page.keyboard.type('amounts');
  await page.keyboard.press('Enter');
  await entry(page, 'size_mm').waitFor();
  assert.equal(await entry(page, 'force_kN').inputValue(), '33,2');
  await page.goBack();
  await entry(page, 'area_mm2').waitFor();
  assert.equal(await entry(page, 'area_mm2').inputValue(), '102');
  await page.close();
});

test('an address with a calculation that does not exist says so and offers the way on', async () => {
  const page = await open('?1=tea-strength&2=nominal-area&2.size_mm=8');
  await page.getByText('There is no calculation “tea-strength”').waitFor();
  assert.ok((await shown(page, 'area_mm2', 2)) > 0);
  await page.getByRole('button', { name: /Take .*tea-strength.* off the sheet/ }).click();
  assert.ok((await shown(page, 'area_mm2', 1)) > 0);
  await page.close();
});
