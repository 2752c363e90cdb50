import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import type { CampaignFinding } from '@provinghouse/contract';
import type { Browser } from 'playwright-core';
import { colourViolations, violations } from './audit.ts';
import { furnishBench } from './bench-kit.ts';
import { launchChromium } from './chromium.ts';
import { type DemoServer, demoCampaign, serveDemo } from './demo-server.ts';
import { readFinding, screensOf } from './screens.ts';

let server: DemoServer;
let browser: Browser;
let finding: CampaignFinding;

before(async () => {
  server = await serveDemo();
  await furnishBench(server.address);
  finding = await readFinding(server.address, demoCampaign);
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await server?.close();
});

test('the audit sees a fault where there is one', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(server.address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(`document.querySelector('h1').style.color = '#ddd'`);
  assert.match((await violations(page)).join(), /color-contrast/);
  await context.close();
});

test('axe finds nothing on any screen: by every rule on a light ground, and by those of colour, the one thing that changes, on a dark one', async () => {
  const context = await browser.newContext({ colorScheme: 'light', viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  const faults: Record<string, string[]> = {};
  for (const { name, path } of screensOf(finding)) {
    await page.emulateMedia({ colorScheme: 'light' });
    await page.goto(`${server.address}${path}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.waitForLoadState('networkidle');
    const onLight = await violations(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.locator('html[data-mantine-color-scheme="dark"]').waitFor();
    const own = [...onLight, ...(await colourViolations(page))];
    if (own.length > 0) faults[name] = own;
  }
  assert.deepEqual(faults, {});
  await context.close();
});

for (const colorScheme of ['light', 'dark'] as const) {
  describe(`on a ${colorScheme} ground`, () => {
    test('axe finds nothing in the ways by keyboard, nor in who is at the bench', async () => {
      const context = await browser.newContext({ colorScheme });
      const page = await context.newPage();
      await page.goto(`${server.address}/c/${demoCampaign}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      for (const [key, title] of [
        ['Control+k', 'Go to'],
        ['?', 'Keys'],
      ] as const) {
        await page.keyboard.press(key);
        await page.getByRole('dialog', { name: title }).waitFor();
        assert.deepEqual(await violations(page), [], title);
        await page.keyboard.press('Escape');
        await page.locator('dialog').waitFor({ state: 'detached' });
      }
      await page.getByRole('button', { name: 'Who is it?' }).click();
      assert.deepEqual(await violations(page), [], 'who');
      await context.close();
    });

    test('axe finds nothing in what opens from a number', async () => {
      const context = await browser.newContext({ colorScheme });
      const page = await context.newPage();
      await page.goto(`${server.address}/c/${demoCampaign}/p/${finding.pieces[0]?.piece}`);
      await page.locator('.judgements .opens').first().click();
      await page.getByRole('dialog').waitFor();
      assert.deepEqual(await violations(page), []);
      await context.close();
    });
  });
}

test('targets of the masthead, the figure and the neighbours are 44 pixels or more', async () => {
  const page = await browser.newPage();
  await page.goto(`${server.address}/c/${demoCampaign}/p/${finding.pieces[1]?.piece}`);
  await page.locator('.trace-host canvas').waitFor();
  const boxes = await page
    .locator('.plate a:not(.skip), .plate button, .press, .choice-label')
    .evaluateAll((elements) =>
      elements.map((element) => ({ words: element.textContent ?? '', box: element.getBoundingClientRect().toJSON() })),
    );
  assert.ok(boxes.length > 12);
  for (const { words, box } of boxes) assert.ok(box.height >= 44, `${words}: ${box.height} px high`);
  await page.close();
});
