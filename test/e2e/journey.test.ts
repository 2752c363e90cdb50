import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { gzipSync } from 'node:zlib';
import type { CampaignFinding } from '@provinghouse/contract';
import { startServer } from '@provinghouse/server';
import type { Browser, Page } from 'playwright-core';
import { inkPixels, picture } from './canvas.ts';
import { launchChromium } from './chromium.ts';
import { type DemoServer, demoCampaign, serveDemo } from './demo-server.ts';
import { readFinding, screensOf } from './screens.ts';

let server: DemoServer;
let browser: Browser;
let finding: CampaignFinding;

before(async () => {
  server = await serveDemo();
  finding = await readFinding(server.address, demoCampaign);
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await server?.close();
});

/** A page that records what goes wrong in it and what it asks for. */
async function openPage() {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  const faults: string[] = [];
  const requests: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('request', (request) => requests.push(request.url()));
  return { page, faults, requests };
}

async function heading(page: Page, words: string | RegExp): Promise<void> {
  await page.getByRole('heading', { level: 1, name: words }).waitFor();
}

/** Presses Tab until the element in focus reads `name`: only what a keyboard reaches is found. */
async function tabTo(page: Page, name: string, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press(key);
    const words = await page.locator(':focus').allTextContents();
    if (words.some((text) => text.trim() === name)) return;
  }
  assert.fail(`${key} never reaches "${name}"`);
}

describe('the demo campaign in the browser', () => {
  test('a keyboard alone leads from the list to the board, a piece, its neighbour and the findings', async () => {
    const { page, faults } = await openPage();
    const [first, second] = finding.pieces;
    assert.ok(first && second);
    await page.goto(server.address);
    await heading(page, 'Campaigns');
    await tabTo(page, finding.campaign.title);
    await page.keyboard.press('Enter');
    await heading(page, finding.campaign.title);
    await tabTo(page, first.piece);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await heading(page, first.piece);
    await page.keyboard.press('ArrowRight');
    await heading(page, second.piece);
    await page.keyboard.press('ArrowLeft');
    await heading(page, first.piece);
    await tabTo(page, 'Findings', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await heading(page, 'Findings');
    assert.deepEqual(faults, []);
    await page.close();
  });

  test('the first press of Tab offers the way past the masthead', async () => {
    const { page } = await openPage();
    await page.goto(`${server.address}/c/${demoCampaign}`);
    await heading(page, finding.campaign.title);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    assert.equal(await page.locator(':focus').getAttribute('id'), 'matter');
    await page.close();
  });

  test('every piece stands on the board with the word of its verdict', async () => {
    const { page } = await openPage();
    await page.goto(`${server.address}/c/${demoCampaign}`);
    await heading(page, finding.campaign.title);
    for (const piece of finding.pieces) {
      const row = page.getByRole('row', { name: new RegExp(`^${piece.piece} `) });
      const verdict = await row.getByRole('cell').last().textContent();
      assert.equal(verdict?.trim(), piece.standing, piece.piece);
    }
    await page.close();
  });

  test('the findings say the verdict of every requirement in words', async () => {
    const { page } = await openPage();
    await page.goto(`${server.address}/c/${demoCampaign}/findings`);
    await heading(page, 'Findings');
    const cells = await page.locator('.requirements tbody td').allTextContents();
    const asked = finding.products.flatMap((product) => product.judgements.map((judgement) => judgement.verdict));
    const standings = finding.products.map((product) => product.standing);
    for (const verdict of new Set([...asked, ...standings])) {
      const expected = [...asked, ...standings].filter((one) => one === verdict).length;
      assert.equal(cells.filter((cell) => cell.trim().startsWith(verdict)).length, expected, verdict);
    }
    await page.close();
  });

  test('a number opens to how it came about, and Escape brings the focus back to it', async () => {
    const { page } = await openPage();
    const piece = finding.pieces.find((one) => (one.pull?.maximum?.contributions.length ?? 0) > 0);
    const origin = piece?.pull?.maximum?.origin;
    assert.ok(piece && origin);
    await page.goto(`${server.address}/c/${demoCampaign}/p/${piece.piece}`);
    const number = page.locator('.pull-maximum button');
    await number.focus();
    await page.keyboard.press('Enter');
    const opened = page.getByRole('dialog');
    await opened.waitFor();
    const words = (await opened.textContent())?.toLowerCase() ?? '';
    assert.ok(words.includes(origin.toLowerCase()));
    for (const part of piece.pull?.maximum?.contributions ?? [])
      assert.ok(words.includes(part.name.toLowerCase()), part.name);
    await page.keyboard.press('Escape');
    await opened.waitFor({ state: 'detached' });
    await page.locator('.pull-maximum button:focus').waitFor();
    await page.close();
  });
});

describe('the trace', () => {
  async function openTrace() {
    const opened = await openPage();
    const piece = finding.pieces.find((one) => one.pull?.use === 'value' && one.pull.reading !== null);
    assert.ok(piece);
    await opened.page.goto(`${server.address}/c/${demoCampaign}/p/${piece.piece}`);
    await opened.page.locator('.trace-host canvas').waitFor();
    return { ...opened, piece };
  }

  test('is drawn, and drawn anew against another axis', async () => {
    const { page, faults } = await openTrace();
    const pictures = new Set<string>();
    for (const axis of ['extension', 'table', 'time']) {
      await page.getByText(axis, { exact: true }).first().click();
      await page.getByRole('application', { name: `Force against ${axis}` }).waitFor();
      assert.ok((await inkPixels(page)) > 300, `${axis}: the curve is missing`);
      pictures.add(await picture(page));
    }
    assert.equal(pictures.size, 3);
    assert.deepEqual(faults, []);
    await page.close();
  });

  test('zooms by key, button and dragging, and shows the whole again', async () => {
    const { page } = await openTrace();
    const host = page.getByRole('application');
    const whole = await picture(page);
    await host.focus();
    await page.keyboard.press('+');
    const zoomed = await picture(page);
    assert.notEqual(zoomed, whole);
    await page.keyboard.press('ArrowRight');
    assert.notEqual(await picture(page), zoomed);
    await page.keyboard.press('0');
    assert.equal(await picture(page), whole);
    await page.getByRole('button', { name: 'Zoom in' }).click();
    assert.equal(await picture(page), zoomed);
    await page.getByRole('button', { name: 'Whole trace' }).click();
    const box = await page.locator('.u-over').boundingBox();
    assert.ok(box);
    await page.mouse.move(box.x + box.width * 0.3, box.y + box.height * 0.3);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.6, box.y + box.height * 0.7, { steps: 4 });
    await page.mouse.up();
    assert.notEqual(await picture(page), whole);
    await page.close();
  });

  test('follows the ground, dark or light', async () => {
    const { page } = await openTrace();
    const light = await picture(page);
    await page.getByRole('button', { name: 'Dark ground' }).click();
    await page.getByRole('button', { name: 'Light ground' }).waitFor();
    assert.ok((await inkPixels(page)) > 300);
    assert.notEqual(await picture(page), light);
    await page.reload();
    await page.getByRole('button', { name: 'Light ground' }).waitFor();
    await page.close();
  });

  test('says its numbers in a table beside it', async () => {
    const { page, piece } = await openTrace();
    const rows = page.locator('.reading tbody tr');
    const reading = piece.pull?.reading;
    assert.ok(reading);
    assert.equal(await rows.filter({ hasText: 'samples' }).getByRole('button').textContent(), `${reading.samples}`);
    assert.ok((await rows.count()) > 15);
    await page.close();
  });
});

describe('on every screen', () => {
  test('nothing is asked of another origin, and the policy of the server is never broken', async () => {
    const { page, faults, requests } = await openPage();
    for (const { path } of screensOf(finding)) {
      await page.goto(`${server.address}${path}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.waitForLoadState('networkidle');
    }
    assert.ok(requests.length > 20);
    assert.deepEqual(
      requests.filter((url) => !url.startsWith(`${server.address}/`)),
      [],
    );
    const unexpected = faults.filter((fault) => !/404 \(Not Found\)/.test(fault));
    assert.deepEqual(unexpected, []);
    await page.close();
  });

  test('the script of the first load stays under 350 kB, compressed', async () => {
    for (const path of ['/', `/c/${demoCampaign}/p/${finding.pieces[0]?.piece}`]) {
      const { page } = await openPage();
      const sizes: number[] = [];
      page.on('response', async (response) => {
        if (response.request().resourceType() === 'script') sizes.push(gzipSync(await response.body()).length);
      });
      await page.goto(`${server.address}${path}`);
      await page.waitForLoadState('networkidle');
      const total = sizes.reduce((sum, size) => sum + size, 0);
      assert.ok(total > 20_000 && total < 350_000, `${path}: ${total} bytes`);
      await page.close();
    }
  });

  test('nothing runs out of a window 1024 or 2560 pixels wide', async () => {
    for (const width of [1024, 2560]) {
      const page = await browser.newPage({ viewport: { width, height: 768 } });
      for (const { name, path } of screensOf(finding)) {
        await page.goto(`${server.address}${path}`);
        await page.getByRole('heading', { level: 1 }).waitFor();
        const overflow = await page.evaluate<number>(
          'document.documentElement.scrollWidth - document.documentElement.clientWidth',
        );
        assert.ok(overflow <= 0, `${name} at ${width}: ${overflow} px too wide`);
      }
      await page.close();
    }
  });

  test('an empty record says what to do next', async () => {
    const nothing = async () => null;
    const ports = {
      campaigns: async () => ({ campaigns: [], next: null }),
      finding: nothing,
      brief: nothing,
      curve: nothing,
      package: nothing,
      report: nothing,
      ledger: nothing,
      ledgerState: nothing,
    };
    const empty = await startServer({ ports, port: 0 });
    const { page } = await openPage();
    await page.goto(empty.address);
    await page.getByText('provinghouse bring-in DIR').waitFor();
    await page.close();
    await empty.close();
  });

  test('a screen whose script cannot be had says so instead of staying blank', async () => {
    const { page } = await openPage();
    await page.route('**/assets/findings-*.js', (route) => route.abort());
    await page.goto(`${server.address}/c/${demoCampaign}/findings`);
    await heading(page, 'This screen could not be shown');
    await page.getByRole('link', { name: 'Board' }).click();
    await heading(page, finding.campaign.title);
    await page.close();
  });

  test('what is missing says so and what to do', async () => {
    const { page } = await openPage();
    await page.goto(`${server.address}/c/NONE`);
    await heading(page, 'The record could not be read');
    await page.getByText('campaign-unknown').waitFor();
    await page.goto(`${server.address}/nowhere/at/all`);
    await heading(page, 'There is nothing at this address');
    await page.getByRole('link', { name: 'Go to the campaigns' }).click();
    await heading(page, 'Campaigns');
    await page.close();
  });
});
