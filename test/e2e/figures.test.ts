import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import type { Browser, Page } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { type DemoServer, demoCampaign, serveDemo } from './demo-server.ts';

let server: DemoServer;
let browser: Browser;
let page: Page;

before(async () => {
  server = await serveDemo();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${server.address}/c/${demoCampaign}/findings`);
  await page.getByRole('button', { name: 'Save SVG' }).first().waitFor();
});

after(async () => {
  await browser?.close();
  await server?.close();
});

/** The bytes a press on a button sends to the reader's disc. */
async function saved(name: string): Promise<Buffer> {
  const coming = page.waitForEvent('download');
  await page.locator('figure').getByRole('button', { name }).first().click();
  const file = await (await coming).path();
  return readFile(file);
}

test('every figure is drawn, and each has its numbers as a table', async () => {
  // The parts of the page come one after the other.
  await page.locator('figure.statistic').nth(9).waitFor({ state: 'attached' });
  const figures = await page.locator('figure.statistic').all();
  for (const figure of figures) {
    await figure.scrollIntoViewIfNeeded();
    await figure.locator('svg').waitFor();
    assert.equal(await figure.getByText('The numbers as a table').count(), 1);
    assert.equal(await figure.getByRole('button', { name: 'Save CSV' }).count(), 1);
  }
});

test('a figure saves as SVG, as PNG and its numbers as CSV', async () => {
  assert.match((await saved('Save SVG')).toString('utf8'), /^(<\?xml[^>]*>\s*)?<svg[\s\S]*<\/svg>\s*$/);
  assert.deepEqual([...(await saved('Save PNG')).subarray(0, 4)], [0x89, 0x50, 0x4e, 0x47]);
  const [head, ...rows] = (await saved('Save CSV')).toString('utf8').trim().split(/\r?\n/);
  assert.ok((head ?? '').split(',').length > 1);
  assert.ok(rows.length > 1);
});
