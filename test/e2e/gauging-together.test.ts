import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import type { Browser, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import { type GaugingBench, openCampaign, openGaugingBench, post, rowsKept } from './gauging-bench.ts';
import { allKept, sitDown } from './gauging-page.ts';

let bench: GaugingBench;
let browser: Browser;

before(async () => {
  bench = await openGaugingBench();
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

test('two windows of one browser read two pieces at the same time, nothing is lost, and each sees what the other kept', async () => {
  await openCampaign(bench.address, { code: 'TWO', pieces: 2, links: 2 });
  const { page: one, context, faults } = await sitDown({ browser, bench }, '/c/TWO/gauging/P-1');
  const two = await context.newPage();
  await two.goto(`${bench.address}/c/TWO/gauging/P-2`);
  await two.locator('.gauging-box').waitFor();
  const values = (stem: string) => Array.from({ length: 4 }, (_, at) => `${stem}${at + 1}`);
  const read = async (page: Page, stem: string) => {
    for (const value of values(stem)) {
      await page.keyboard.type(value);
      await page.keyboard.press('Enter');
    }
  };
  await Promise.all([read(one, '8.0'), read(two, '7.9')]);
  await allKept(one);
  await allKept(two);
  const held = await rowsKept(bench.address, 'TWO', 'gauging');
  assert.deepEqual(held.map(({ body }) => `${body.piece} ${body.value_mm}`).sort(), [
    ...values('8.0').map((value) => `P-1 ${value}`),
    ...values('7.9').map((value) => `P-2 ${value}`),
  ]);
  await two.getByText('8.04', { exact: true }).first().waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});

test('two people read one place at once: the second is told and keeps theirs as a further reading', async () => {
  await openCampaign(bench.address, { code: 'BOTH', pieces: 1, links: 1 });
  const { page: one, context } = await sitDown({ browser, bench }, '/c/BOTH/gauging/P-1');
  const { page: two, context: other } = await sitDown({ browser, bench }, '/c/BOTH/gauging/P-1');
  for (const [page, value] of [
    [one, '8.01'],
    [two, '8.04'],
  ] as const) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
  await two.getByText('One entry was refused').waitFor();
  assert.deepEqual(await violations(two), []);
  await two.reload();
  await two.getByRole('button', { name: 'Keep as a further reading' }).click();
  await allKept(two);
  const held = await rowsKept(bench.address, 'BOTH', 'gauging');
  assert.deepEqual(
    held.map(({ body }) => [body.repeat, body.value_mm]),
    [
      [1, 8.01],
      [2, 8.04],
    ],
  );
  await context.close();
  await other.close();
});

test('an instrument without a certificate in force is used only with a reason, asked once and written with every reading', async () => {
  await openCampaign(bench.address, { code: 'EXPIRED', pieces: 1, links: 1 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/EXPIRED/gauging/P-1', {
    instrument: 'CAL-OLD',
  });
  await page.getByText('CAL-OLD has no certificate in force').waitFor();
  assert.equal(await page.locator('.gauging-box').count(), 0);
  await page.getByLabel('Why is it used all the same?').fill('the other calliper is away');
  await page.keyboard.press('Enter');
  await page.getByText('read without a certificate in force: the other calliper is away').waitFor();
  for (const value of ['8.05', '8.06']) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
  await allKept(page);
  const { entries } = await (await fetch(`${bench.address}/api/campaigns/EXPIRED/ledger`)).json();
  const whys = entries
    .filter(({ kind }: { kind: string }) => kind === 'gauging')
    .map(({ why }: { why: string }) => why);
  assert.equal(whys.length, 2);
  for (const why of whys) assert.match(why, /without a certificate in force for CAL-OLD: the other calliper is away/);
  await page.reload();
  await page.getByText('read without a certificate in force: the other calliper is away').waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});

test('an older reading is corrected with a reason, and one outside its limit carries a word and a shape', async () => {
  await openCampaign(bench.address, { code: 'OLDER', pieces: 1, links: 1 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/OLDER/gauging/P-1');
  await page.keyboard.type('8.05');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Correct Link 1/ }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('Reading').fill('9,05');
  await sheet.getByLabel('Why is it corrected?').fill('misread');
  await sheet.getByRole('button', { name: 'Keep the correction' }).click();
  await sheet.waitFor({ state: 'detached' });
  await page.locator('.gauging-table').getByText('above its limit').waitFor();
  assert.equal(await page.locator('.gauging-table .gauging-side').count(), 1);
  const [held] = await rowsKept(bench.address, 'OLDER', 'gauging');
  assert.equal(held?.body.value_mm, 9.05);
  await page.getByLabel('Diameters read over').selectOption('zinc');
  await page.locator('.gauging-table').getByText('above, zinc on it').waitFor();
  const [piece] = await rowsKept(bench.address, 'OLDER', 'pieces');
  assert.equal(piece?.body.gauged_over, 'zinc');
  assert.deepEqual(faults, []);
  await context.close();
});

test('while a campaign is blind its pieces are gauged without a word of whose they are', async () => {
  await openCampaign(bench.address, { code: 'BLIND', pieces: 1, links: 1, blinding: 'blind' });
  await post(`${bench.address}/api/campaigns/BLIND/plan/freeze`, { who: 'wren', why: 'planned' });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/BLIND/gauging');
  await page.getByText('Product A').waitFor();
  await page.getByRole('link', { name: 'Go on with P-1' }).click();
  await page.locator('.gauging-box').waitFor();
  await page.keyboard.type('8.01');
  await page.keyboard.press('Enter');
  await allKept(page);
  assert.doesNotMatch((await page.locator('body').textContent()) ?? '', /ash/i);
  await page.getByLabel('Diameters read over').selectOption('zinc');
  await allKept(page);
  const [piece] = await rowsKept(bench.address, 'BLIND', 'pieces');
  assert.equal(piece?.body.gauged_over, 'zinc');
  assert.equal((await rowsKept(bench.address, 'BLIND', 'gauging')).length, 1);
  assert.deepEqual(faults, []);
  await context.close();
});

for (const [colorScheme, code] of [
  ['light', 'AXE-L'],
  ['dark', 'AXE-D'],
] as const)
  test(`axe finds nothing in a question, a reading outside its limit, a missing certificate, a pasted fault: ${colorScheme} ground`, async () => {
    await openCampaign(bench.address, { code, pieces: 1, links: 1 });
    const { page, context } = await sitDown({ browser, bench }, `/c/${code}/gauging/P-1`, {
      instrument: 'CAL-OLD',
      colorScheme,
    });
    await page.getByText('CAL-OLD has no certificate in force').waitFor();
    assert.deepEqual(await violations(page), [], 'certificate');
    await page.getByLabel('Instrument').selectOption('CAL-1');
    await page.locator('.gauging-box').waitFor();
    for (const value of ['8.9', '8.9', '80.1']) {
      await page.keyboard.type(value);
      await page.keyboard.press('Enter');
    }
    await page.locator('.gauging-questions').waitFor();
    await allKept(page);
    await page.locator('.gauging-table .gauging-side').waitFor();
    assert.deepEqual(await violations(page), [], 'question');
    await page.getByRole('button', { name: 'paste a table' }).click();
    const sheet = page.getByRole('dialog');
    assert.deepEqual(await violations(page), [], 'empty sheet');
    await sheet.getByLabel('Pasted table').fill('link\tpitch\n1\tabout 24');
    await sheet.getByText('1 fault').waitFor();
    assert.deepEqual(await violations(page), [], 'fault');
    await page.keyboard.press('Escape');
    await page.goto(`${bench.address}/c/${code}/gauging`);
    await page.getByLabel('Chosen here').check();
    assert.deepEqual(await violations(page), [], 'list');
    await context.close();
  });
