import assert from 'node:assert/strict';
import { once } from 'node:events';
import { mkdir, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Browser, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import type { DemoServer } from './demo-server.ts';
import { fillChecklist, practiceRig, servePracticeBench } from './practice-bench.ts';

let bench: DemoServer;
let browser: Browser;
let panel: Server;

/** A panel whose lines the file of its rig does not describe. */
async function talk(): Promise<number> {
  panel = createServer((socket) => {
    let i = 0;
    const timer = setInterval(() => socket.write(`LOAD=+${(i++ % 7) + 0.25}KN\r\n`), 10);
    socket.on('close', () => clearInterval(timer));
    socket.on('error', () => undefined);
  }).listen(0, '127.0.0.1');
  await once(panel, 'listening');
  const address = panel.address();
  assert.ok(typeof address === 'object' && address);
  return address.port;
}

before(async () => {
  const port = await talk();
  const wrong = { sources: [{ kind: 'tcp lines', host: '127.0.0.1', port, pattern: 'F {force[kN]}' }] };
  bench = await servePracticeBench(20, async (home) => {
    await mkdir(join(home, 'kit'), { recursive: true });
    await writeFile(join(home, 'kit', 'WRONG-RIG.json'), JSON.stringify(wrong));
  });
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await bench?.close();
  panel?.close();
});

async function open(path: string, options: { colorScheme?: 'light' | 'dark'; width?: number } = {}) {
  const { colorScheme = 'light', width = 1280 } = options;
  const context = await browser.newContext({ viewport: { width, height: 844 }, colorScheme });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  await page.goto(`${bench.address}${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { page, faults };
}

async function fits(page: Page): Promise<void> {
  const over = await page.evaluate<number>(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  );
  assert.ok(over <= 0, `${over} px too wide`);
}

describe('the list of rigs', () => {
  test('names every rig of the bench with its state, and leads to the pull and to the wires by keyboard', async () => {
    const { page } = await open('/');
    await page.getByRole('link', { name: 'Rig', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Rigs' }).waitFor();
    const row = page.getByRole('listitem').filter({ hasText: practiceRig });
    await row.getByText('practice, simulated', { exact: true }).waitFor();
    await row.getByText('free', { exact: true }).waitFor();
    await page.getByRole('listitem').filter({ hasText: 'WRONG-RIG' }).getByText('no campaign knows it').waitFor();
    assert.deepEqual(await violations(page), []);
    await row.getByRole('link', { name: `Test the wires: ${practiceRig}` }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: `Wires of ${practiceRig}` }).waitFor();
    await page.close();
  });

  test('holds on a phone, on a dark ground', async () => {
    const { page } = await open('/rig', { colorScheme: 'dark', width: 390 });
    await page.getByRole('link', { name: `Arm a pull: ${practiceRig}` }).waitFor();
    assert.deepEqual(await violations(page), []);
    await fits(page);
    await page.close();
  });
});

describe('the wires', () => {
  test('that are well say so in one line, with lines, readings and rates below, and PRACTICE above', async () => {
    const { page, faults } = await open(`/rig/${practiceRig}`);
    await page.getByRole('link', { name: 'Test the wires' }).click();
    await page.getByText('All 3 channels are heard.').waitFor();
    await page.getByText('PRACTICE: what is heard is simulated.').waitFor();
    const rate = await page.getByText(/^\d+ readings a second, arrivals steady within [\d.]+\sms\.$/).textContent();
    assert.ok(Number.parseInt(rate ?? '', 10) > 50, rate ?? 'no rate');
    const force = page.getByRole('region', { name: 'force' });
    assert.match((await force.locator('.wire-now').textContent()) ?? '', /^[−\d.]+kN$/);
    await page
      .getByText(/^F -?[\d.]+ T [\d.]+ X/)
      .first()
      .waitFor();
    assert.deepEqual(await violations(page), []);
    await page.getByRole('button', { name: 'Hold still' }).press('Enter');
    const held = await page.locator('.wire-lines').textContent();
    await page.waitForTimeout(600);
    assert.equal(await page.locator('.wire-lines').textContent(), held);
    await page.getByRole('button', { name: 'Go on' }).press('Enter');
    await page.waitForTimeout(600);
    assert.notEqual(await page.locator('.wire-lines').textContent(), held);
    assert.deepEqual(faults, []);
    await page.close();
  });

  test('read by a wrong pattern show the line beside the pattern, and what to do', async () => {
    const { page } = await open('/rig/WRONG-RIG/wires', { colorScheme: 'dark', width: 390 });
    await page.getByText('Not ready for a pull.').waitFor();
    const beside = page.locator('.wire-beside');
    assert.match((await beside.textContent()) ?? '', /What cameLOAD=\+\d\.25KNPatternF \{force\[kN\]\}/);
    await page.getByText('Write the pattern as the line stands').waitFor();
    await page.getByText('another shape').first().waitFor();
    assert.deepEqual(await violations(page), []);
    await fits(page);
    await page.close();
  });

  test('are given up to a pull that is armed, and not tested while it stands', async () => {
    const { page } = await open(`/rig/${practiceRig}/wires`);
    await page.getByText('All 3 channels are heard.').waitFor();
    const second = await open(`/rig/${practiceRig}`);
    await fillChecklist(second.page, 'PRACTICE-8-20');
    await second.page.getByRole('button', { name: 'Arm the rig' }).click();
    await second.page.getByRole('button', { name: 'Start' }).waitFor();
    await page.getByText('A pull is being armed, and has the wires now.').waitFor();
    await page.getByRole('button', { name: 'Listen again' }).click();
    await page.getByText('The wires cannot be tested now.').waitFor();
    await page.getByText(/^.*The wires of PRACTICE-RIG are taken by pull P-\d+\./).waitFor();
    assert.deepEqual(await violations(page), []);
    const list = await open('/rig');
    await list.page.getByText(/^armed for PRACTICE-8-20, pull P-\d+$/).waitFor();
    await list.page.getByRole('link', { name: `Watch the pull: ${practiceRig}` }).waitFor();
    await second.page.keyboard.press('Escape');
    await second.page.keyboard.press('Escape');
    await second.page.getByText('Nothing was recorded.').waitFor();
    await page.getByRole('button', { name: 'Listen again' }).click();
    await page.getByText('All 3 channels are heard.').waitFor();
    await Promise.all([page, second.page, list.page].map((one) => one.close()));
  });

  test('of a rig that is not on the bench are not there, and the page says what to do', async () => {
    const { page } = await open('/rig/NONE/wires');
    await page.getByRole('heading', { name: 'There is no rig NONE on this bench' }).waitFor();
    await page.getByRole('link', { name: 'All rigs' }).waitFor();
    await page.close();
  });
});
