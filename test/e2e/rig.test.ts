import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import type { CampaignFinding, RigDesk } from '@provinghouse/contract';
import type { Browser, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import type { DemoServer } from './demo-server.ts';
import { fillChecklist, practiceRig, servePracticeBench } from './practice-bench.ts';

let bench: DemoServer;
let browser: Browser;

before(async () => {
  bench = await servePracticeBench(20);
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

const wall = { width: 1920, height: 1080 };

async function openRig(options: { colorScheme?: 'light' | 'dark'; viewport?: typeof wall } = {}) {
  const context = await browser.newContext({ viewport: wall, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(`${bench.address}/rig/${practiceRig}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { page, faults };
}

async function arm(page: Page, piece: string): Promise<void> {
  await fillChecklist(page, piece);
  await page.getByRole('button', { name: 'Arm the rig' }).click();
  await page.getByRole('button', { name: 'Start' }).waitFor();
}

/** Height of a capital letter as drawn, in CSS pixels. */
function capHeight(page: Page, selector: string): Promise<number> {
  return page
    .locator(selector)
    .first()
    .evaluate((element) => {
      const style = getComputedStyle(element);
      const context = document.createElement('canvas').getContext('2d');
      if (!context) return 0;
      context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      return context.measureText('H').actualBoundingBoxAscent;
    });
}

/**
 * Capital letters as drawn, CSS pixels. On a display 1 m wide a pixel of 1920 is 0.52 mm, and 48 of them are 25 mm: the two hundredth part of
 * five metres, from which a character is legible (rule of the trade, from memory).
 */
const legible = [
  ['.numeral-value', 150],
  ['.stage-word', 60],
  ['.maxima > div:nth-child(1) dd', 60],
  ['.maxima > div:nth-child(2) dd', 60],
  ['.live-facts > div:nth-child(1) .live-fact', 48],
  ['.live-facts > div:nth-child(2) .live-fact', 48],
] as const;

describe('before a pull', () => {
  test('a rig that is not on the bench says so and what to do', async () => {
    const page = await browser.newPage();
    await page.goto(`${bench.address}/rig/NONE`);
    await page.getByRole('heading', { name: 'There is no rig NONE on this bench' }).waitFor();
    await page.close();
  });

  test('a caution left open and a tag that reads otherwise keep the rig unarmed, in words', async () => {
    const { page } = await openRig();
    await fillChecklist(page, 'PRACTICE-8-10', 'PRACTICE-8-11');
    await page.getByText('This is not the piece chosen.').waitFor();
    await page.getByRole('button', { name: 'Arm the rig' }).click();
    await page.getByText('The tag reads "PRACTICE-8-11", the piece chosen is PRACTICE-8-10.').waitFor();
    await page.getByLabel('Code on its tag').fill('practice-8-10');
    await page.getByRole('checkbox', { name: /Stored energy/ }).uncheck();
    await page.getByRole('button', { name: 'Arm the rig' }).click();
    await page.getByText('Not acknowledged: stored energy.').waitFor();
    await page.close();
  });

  test('Enter, with which a scanner ends a code, does not arm', async () => {
    const { page } = await openRig();
    await fillChecklist(page, 'PRACTICE-8-10');
    await page.getByLabel('Code on its tag').press('Enter');
    await page.waitForTimeout(300);
    assert.equal(await page.getByRole('button', { name: 'Start' }).count(), 0);
    await page.close();
  });

  test('stop gives up a pull that has not begun, after asking once; nothing is recorded', async () => {
    const { page } = await openRig();
    await arm(page, 'PRACTICE-8-12');
    await page.keyboard.press('Escape');
    await page.getByText('Press stop once more to give up this pull.').waitFor();
    await page.keyboard.press('Escape');
    await page.getByText('Nothing was recorded.').waitFor();
    const desk = (await (await fetch(`${bench.address}/api/rigs/${practiceRig}`)).json()) as RigDesk;
    assert.equal(desk.campaigns[0]?.pieces.find(({ piece }) => piece === 'PRACTICE-8-12')?.isPulled, false);
    await page.close();
  });
});

test('a practice pull from the checklist to the record, by keyboard, watched by a second screen', async () => {
  const { page, faults } = await openRig();
  const second = await openRig({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' });
  assert.deepEqual(await violations(page), [], 'checklist');
  await arm(page, 'PRACTICE-8-1');
  await second.page.getByRole('heading', { name: /^PRACTICE-8-1, pull P-/ }).waitFor();
  await page.keyboard.press('Space');
  await page.locator('.stage-near').waitFor({ timeout: 30_000 });
  await page.keyboard.press('m');
  await page.getByText(/s: bang$/).waitFor();
  await page.getByText('It does not control or stop the machine').waitFor();
  assert.equal(await page.locator('.across').isVisible(), true);
  assert.deepEqual(await violations(page), [], 'while it runs');
  for (const [selector, least] of legible) {
    const height = await capHeight(page, selector);
    assert.ok(height >= least, `${selector} is ${height} px high, too small for the wall`);
  }
  await page.getByText('Parted.').waitFor({ timeout: 60_000 });
  assert.deepEqual(await violations(page), [], 'when it has ended');
  const shown = Number.parseFloat((await page.locator('.maxima dd').last().textContent()) ?? '');
  await second.page.getByText('Parted.').waitFor();
  assert.deepEqual(await violations(second.page), [], 'on a phone, dark');
  const overflow = await second.page.evaluate<number>(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  );
  assert.ok(overflow <= 0, `${overflow} px too wide for a phone`);

  const finding = (await (await fetch(`${bench.address}/api/campaigns/PRACTICE`)).json()) as CampaignFinding;
  const pull = finding.pieces.find(({ piece }) => piece === 'PRACTICE-8-1')?.pull;
  assert.equal(pull?.use, 'value');
  assert.match(pull?.note ?? '', /^PRACTICE: .*: bang\.$/);
  assert.match(pull?.traceSha256 ?? '', /^[0-9a-f]{64}$/);
  const { zeroForce_kN, maximumForce_kN } = pull?.reading ?? {};
  assert.ok(Math.abs(shown - ((maximumForce_kN ?? 0) + (zeroForce_kN ?? 0))) < 0.05, `${shown} kN on the screen`);
  await page.getByRole('link', { name: 'Open PRACTICE-8-1' }).click();
  await page.getByRole('heading', { level: 1, name: 'PRACTICE-8-1' }).waitFor();
  assert.deepEqual(faults, []);
  assert.deepEqual(second.faults, []);
  await page.close();
  await second.page.close();
});
