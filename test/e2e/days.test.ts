import assert from 'node:assert/strict';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import { benchBook, enterRows, rowsOf } from '@provinghouse/service/entry';
import type { Browser, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { checkedInstrument, furnishBench } from './bench-kit.ts';
import { launchChromium } from './chromium.ts';
import { field, fillIn } from './form-field.ts';
import { benchCampaign, type PullsBench, servePullsBench } from './pulls-bench.ts';

let browser: Browser;
let bench: PullsBench;
let page: Page;

before(async () => {
  browser = await launchChromium();
  bench = await servePullsBench();
  await furnishBench(bench.address);
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

beforeEach(async () => {
  // A browser whose own way of writing a day is 11/25/2026, at a bench whose clock is put forward and back.
  const context = await browser.newContext({ locale: 'en-US', timezoneId: 'Europe/Berlin' });
  await context.addInitScript(() => localStorage.setItem('provinghouse-person', 'wren'));
  context.setDefaultTimeout(15_000);
  page = await context.newPage();
  page.on('dialog', (dialog) => void dialog.accept());
});

afterEach(async () => {
  await page.context().close();
});

const press = (name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
const samplePath = `/c/${benchCampaign}/samples?sample=ASH-8-S1`;
const certificates = () => rowsOf(bench.effects.store, benchBook, 'calibrations');
const panelPulls = () => rowsOf(bench.effects.store, benchCampaign, 'pulls');

async function at(path: string): Promise<void> {
  await page.goto(`${bench.address}${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForLoadState('networkidle');
}

/** Writes into a field as a hand does, and leaves it. */
async function type(label: string, words: string): Promise<void> {
  const control = field(page, label);
  await control.fill('');
  await control.pressSequentially(words);
  await control.blur();
}

const faultAt = (label: string) =>
  page
    .locator('.form-field')
    .filter({ has: page.getByLabel(label, { exact: true }) })
    .locator('.form-fault');

test('no field of days or times is the browser’s own', async () => {
  const own = page.locator('input:is([type=date], [type=datetime-local], [type=time], [type=month])');
  const shown = (label: string) => field(page, label).inputValue();
  await at(`/kit/${checkedInstrument}`);
  assert.match(await shown('To (day it was found)'), /^\d{4}-\d{2}-\d{2}$/);
  assert.equal(await own.count(), 0);
  await at(samplePath);
  await field(page, 'When').waitFor();
  assert.match(await shown('When'), /^\d{4}-\d{2}-\d{2} \d{2}:\d{2}$/);
  assert.equal(await own.count(), 0);
  await press('Receive a sample');
  assert.match(await shown('Day received'), /^\d{4}-\d{2}-\d{2}$/);
  assert.equal(await own.count(), 0);
  await at(`/c/${benchCampaign}/pulls`);
  await press('Key a panel reading');
  assert.match(await shown('When'), /^\d{4}-\d{2}-\d{2} \d{2}:\d{2}$/);
  assert.equal(await own.count(), 0);
});

test('a day that could be another, or is in no calendar, is a fault in place with its cure and is not sent', async () => {
  await at(`/kit/${checkedInstrument}`);
  const known = (await certificates()).length;
  await fillIn(page, { 'Number of the certificate': 'C-2001', 'Calibrated on': '2026-01-12' });
  for (const [typed, fault] of [
    ['11/25/2026', /Write it as 2026-\u206011-\u206025/],
    ['25.11.2026', /Write it as 2026-\u206011-\u206025/],
    ['2026-11', /Write it as 2026-\u206011-\u206025/],
    ['2026-02-30', /the calendar does not have/],
  ] as const) {
    await type('Falls due on', typed);
    await faultAt('Falls due on').getByText(fault).waitFor();
    assert.equal(await field(page, 'Falls due on').inputValue(), typed, 'what was typed stays');
    await press('Keep the certificate');
    await page.locator('input:focus[aria-invalid=true]').waitFor();
  }
  assert.deepEqual(await violations(page), []);
  assert.equal((await certificates()).length, known);
  await type('Falls due on', '20280229');
  assert.equal(await field(page, 'Falls due on').inputValue(), '2028-02-29', 'it is shown as it is kept');
  await faultAt('Falls due on').waitFor({ state: 'detached' });
  await press('Keep the certificate');
  await page.getByRole('rowheader', { name: 'C-2001' }).waitFor();
  const kept = (await certificates()).find(({ calibration }) => calibration === 'C-2001');
  assert.deepEqual([kept?.calibrated_on, kept?.due_on], ['2026-01-12', '2028-02-29']);
});

test('a day that is typed and kept by the Enter key is read as if it had been left', async () => {
  await at(`/kit/${checkedInstrument}`);
  await fillIn(page, { 'Number of the certificate': 'C-2002', 'Falls due on': '2029-01-01' });
  await field(page, 'Calibrated on').pressSequentially('20260101');
  await page.keyboard.press('Enter');
  await page.getByRole('rowheader', { name: 'C-2002' }).waitFor();
  const kept = (await certificates()).find(({ calibration }) => calibration === 'C-2002');
  assert.equal(kept?.calibrated_on, '2026-01-01');
});

test('arrow keys change a day by one over the ends of months and years, and leave a time and half a day alone', async () => {
  await at(samplePath);
  const due = field(page, 'Back by');
  await due.fill('2026-12-31');
  await due.press('ArrowUp');
  assert.equal(await due.inputValue(), '2027-01-01');
  await due.press('ArrowDown');
  await due.press('ArrowDown');
  assert.equal(await due.inputValue(), '2026-12-30');
  await due.fill('2026-12-3');
  await due.press('ArrowUp');
  assert.equal(await due.inputValue(), '2026-12-3');
  const when = field(page, 'When');
  await when.fill('2026-12-31 10:00');
  await when.press('ArrowUp');
  assert.equal(await when.inputValue(), '2026-12-31 10:00');
});

test('half a time outlives a reload, and is neither lost nor sent', async () => {
  await at(samplePath);
  await fillIn(page, { 'Where to': 'shelf 4', 'Back by': '2030-01-2' });
  await type('When', '2026-11-25 14:');
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  assert.equal(await field(page, 'When').inputValue(), '2026-11-25 14:');
  assert.equal(await field(page, 'Back by').inputValue(), '2030-01-2');
  await press('Enter the move');
  await faultAt('When')
    .getByText(/Write it as 2026-\u206011-\u206025.14:30/)
    .waitFor();
  await faultAt('Back by')
    .getByText(/Write it as 2026-\u206011-\u206025/)
    .waitFor();
  assert.deepEqual(await rowsOf(bench.effects.store, benchCampaign, 'custody'), []);
  assert.deepEqual(await violations(page), []);
  await type('When', '20261125T1430');
  assert.equal(await field(page, 'When').inputValue(), '2026-11-25 14:30');
  await type('Back by', '2030-01-20');
  await press('Enter the move');
  await page.getByRole('cell', { name: '2026-11-25 14:30' }).waitFor();
  const [move] = await rowsOf(bench.effects.store, benchCampaign, 'custody');
  assert.equal(move?.moved_at, '2026-11-25T13:30:00Z');
});

test('the key beside a time writes what it is now; it comes after its field by keyboard and is big enough for a glove', async () => {
  await at(`/c/${benchCampaign}/pulls`);
  await press('Key a panel reading');
  const when = field(page, 'When');
  await when.fill('2026');
  await when.press('Tab');
  const now = page.getByRole('button', { name: 'now into When' });
  assert.ok(await now.evaluate((element) => element === document.activeElement));
  const box = await now.boundingBox();
  assert.ok(box !== null && box.height >= 44 && box.width >= 44, JSON.stringify(box));
  await page.keyboard.press('Enter');
  const written = await when.inputValue();
  assert.ok(Math.abs(Date.now() - Date.parse(`${written}Z`)) < 3 * 3_600_000, written);
  await page.keyboard.press('Tab');
  assert.ok(await field(page, 'Note').evaluate((element) => element === document.activeElement));
});

test('a time that the clock of the bench left out is refused; corrected later, an instant that nobody touches keeps its seconds', async () => {
  await at(`/c/${benchCampaign}/pulls`);
  await press('Key a panel reading');
  await page.getByLabel('Piece', { exact: true }).selectOption('ASH-8-2');
  await page.getByLabel('Rig', { exact: true }).selectOption('RIG-1');
  await page.getByLabel('Maximum on the panel').fill('36,4');
  await fillIn(page, { 'Standard uncertainty by eye': '0,1' });
  await type('When', '2026-03-29 02:30');
  await faultAt('When')
    .getByText(/put forward/)
    .waitFor();
  await press('Keep the reading');
  assert.deepEqual(await panelPulls(), []);
  await type('When', '2026-03-29 03:30');
  await press('Keep the reading');
  await page.getByRole('button', { name: 'Open P-001' }).waitFor();
  assert.equal((await panelPulls())[0]?.pulled_at, '2026-03-29T01:30:00Z');
  // In the hour that the clock shows twice, and to the millisecond: what the field shows does not say all of it.
  const pulled_at = '2026-10-25T01:30:05.250Z';
  const body = {
    pull: 'P-002',
    piece: 'ASH-8-1',
    rig: 'RIG-1',
    valid: true,
    panel_maximum_kN: 36,
    panel_uncertainty_kN: 1,
  };
  const pulls = [rowWith('pulls', { ...body, pulled_at })];
  await enterRows(benchCampaign, { rows: { pulls }, who: 'wren' }, bench.effects);
  await at(`/c/${benchCampaign}/pulls`);
  await page.getByRole('button', { name: 'Open P-002' }).click();
  await press('Correct what was keyed');
  const sheet = page.getByRole('dialog', { name: 'Correct pull P-002' });
  assert.equal(await field(sheet, 'When').inputValue(), '2026-10-25 02:30:05');
  await fillIn(sheet, { 'Pulled by': 'wren', 'Why is it corrected?': 'not named' });
  await sheet.getByRole('button', { name: 'Keep the correction' }).click();
  await sheet.waitFor({ state: 'detached' });
  const corrected = (await panelPulls()).find(({ pull }) => pull === 'P-002');
  assert.deepEqual([corrected?.operator, corrected?.pulled_at], ['wren', pulled_at]);
});

test('a press on a key is not lost to the fault of the field that is left for it', async () => {
  await at(`/c/${benchCampaign}/pulls`);
  await press('Key a panel reading');
  await page.setViewportSize({ width: 390, height: 1600 });
  await field(page, 'When').fill('11/25/2026');
  const cancel = await page.getByRole('button', { name: 'Cancel' }).boundingBox();
  assert.ok(cancel !== null);
  await page.mouse.move(cancel.x + 5, cancel.y + 3);
  await page.mouse.down();
  await page.waitForTimeout(100);
  await page.mouse.up();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
});

test('what hangs on an instrument is asked for once both days are days', async () => {
  await at(`/kit/${checkedInstrument}`);
  const asked: string[] = [];
  page.on('request', (request) => request.url().includes('/hanging') && asked.push(new URL(request.url()).search));
  await type('From (last day it was known good)', '25.11.2025');
  await faultAt('From (last day it was known good)')
    .getByText(/Write it as 2026-\u206011-\u206025/)
    .waitFor();
  await type('To (day it was found)', '20260301');
  assert.deepEqual(asked, []);
  await type('From (last day it was known good)', '2025-11-25');
  await page.waitForLoadState('networkidle');
  assert.deepEqual(asked, ['?from=2025-11-25&to=2026-03-01']);
  await press('today into To (day it was found)');
  assert.match(await field(page, 'To (day it was found)').inputValue(), /^20\d{2}-\d{2}-\d{2}$/);
});
