import { mkdtemp, rm } from 'node:fs/promises';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildApp, entryPorts, recordPorts } from '@provinghouse/server';
import { bringIn, openRecord } from '@provinghouse/service';
import { bringInCampaign } from '@provinghouse/store';
import type { Page } from 'playwright-core';
import { launchChromium } from '../test/e2e/chromium.ts';
import { scriptsOfFirstLoad } from '../test/e2e/first-load.ts';
import { writePagePart } from './page-part.ts';
import { longCampaign, longRows } from './screens-campaign.ts';

/** Measures the screens in a real Chromium on this machine: node bench/screens.ts */

const home = await mkdtemp(join(tmpdir(), 'provinghouse-screens-'));
const { effects, close } = await openRecord({ home });
const demo = await bringIn({ path: 'examples/sallow-reach', who: 'bench', why: 'to be measured' }, effects);
const by = { who: 'bench', at: new Date().toISOString(), why: 'to be measured' };
await bringInCampaign(effects.store, { rows: longRows(), files: new Map(), ...by });
const app = buildApp(recordPorts(effects), { entries: entryPorts(effects) });
const address = await app.listen({ port: 0, host: '127.0.0.1' });
const browser = await launchChromium();
const page = await browser.newPage({ viewport: { width: 1024, height: 768 } });
try {
  const rows = [
    ['script of the first load, gzip', `${(await scriptsOfFirstLoad(address, '/')).toFixed(0)} kB`],
    ['campaigns: first paint to heading, fresh browser', ms(await median(9, freshHeading('/')))],
    ['board of the demo (30 pieces), fresh browser', ms(await median(5, freshHeading(`/c/${demo.campaign}`)))],
    ['findings of the demo, fresh browser', ms(await median(5, freshHeading(`/c/${demo.campaign}/findings`)))],
    ['findings: a first press, to the frame that answers it', ms(await median(5, firstPress))],
    ['from piece to piece by arrow key', ms(await pieceToPiece(page))],
    ...(await longBoard(page)),
  ];
  const table = ['| what | median |', '| --- | ---: |', ...rows.map((cells) => `| ${cells.join(' | ')} |`)].join('\n');
  const machine = `${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)}, headless Chromium ${browser.version()}.`;
  console.log(`${table}\n\n${machine}`);
  writePagePart('reference/screens.md', 'measured', `\n${table}\n\n${machine}\n`);
} finally {
  await browser.close();
  await app.close();
  await close();
  await rm(home, { recursive: true, force: true });
}

function ms(value: number): string {
  return `${value.toFixed(0)} ms`;
}

async function median(times: number, measure: () => Promise<number>): Promise<number> {
  const values: number[] = [];
  for (let i = 0; i < times; i += 1) values.push(await measure());
  return values.sort((a, b) => a - b)[Math.floor(times / 2)] ?? Number.NaN;
}

/** Time from the request of the page to its heading being there and taking keys, in a browser that holds nothing yet. */
function freshHeading(path: string): () => Promise<number> {
  return async () => {
    const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
    const fresh = await context.newPage();
    const start = performance.now();
    await fresh.goto(`${address}${path}`, { waitUntil: 'commit' });
    await fresh.locator('h1').waitFor();
    const spent = performance.now() - start;
    await context.close();
    return spent;
  };
}

/** Time from a press on the first part of fresh findings, as soon as it stands there, to the end of the frame that shows it folded. */
async function firstPress(): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  const fresh = await context.newPage();
  await fresh.goto(`${address}/c/${demo.campaign}/findings`, { waitUntil: 'commit' });
  await fresh.locator('#answers summary').waitFor();
  const spent = await fresh.evaluate(async () => {
    const pressed = performance.now();
    document.querySelector<HTMLElement>('#answers summary')?.click();
    while (document.querySelector('#answers .section-matter') !== null) await new Promise(requestAnimationFrame);
    await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
    return performance.now() - pressed;
  });
  await context.close();
  return spent;
}

async function pieceToPiece(page: Page): Promise<number> {
  await page.goto(`${address}/c/${demo.campaign}/p/ASH-8-1`);
  await page.getByRole('heading', { level: 1, name: 'ASH-8-1' }).waitFor();
  return median(9, async () => {
    // As a reader does: the page is looked at before the next key.
    await page.waitForTimeout(400);
    return untilChanged(page, 'h1', () => page.keyboard.press('ArrowRight'));
  });
}

/** Time from a key to the next frame in which the text of an element differs, measured in the page itself. */
async function untilChanged(page: Page, selector: string, act: () => Promise<void>): Promise<number> {
  await page.evaluate((wanted) => {
    const before = document.querySelector(wanted)?.textContent;
    let pressed = performance.now();
    const note = () => {
      pressed = performance.now();
    };
    window.addEventListener('keydown', note, { capture: true, once: true });
    const changed = new Promise<number>((resolve) => {
      const look = () => {
        if (document.querySelector(wanted)?.textContent !== before) resolve(performance.now() - pressed);
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    Reflect.set(window, 'measured', changed);
  }, selector);
  await act();
  return page.evaluate(() => Reflect.get(window, 'measured'));
}

async function longBoard(page: Page): Promise<string[][]> {
  await page.goto(`${address}/c/${longCampaign}`);
  await page.locator('.board-piece').first().waitFor();
  const drawn = await page.locator('.board-piece').count();
  const frames = await page.evaluate(scrollThrough);
  const field = page.getByRole('search').getByRole('textbox');
  await field.focus();
  const letters = ['w', 'e', 'l', 'd', ' ', 'p', '0'];
  let at = 0;
  const filter = await median(letters.length, () => {
    const letter = letters[at] ?? 'x';
    at += 1;
    return untilDrawn(page, () => page.keyboard.type(letter));
  });
  return [
    ['board of 500 pieces: rows drawn of 525', String(drawn)],
    ['scrolling through it: median frame', ms(frames.median)],
    ['scrolling through it: slowest frame of 100', ms(frames.slow)],
    ['filter: from a key to the rows drawn', ms(filter)],
  ];
}

/** Time from a key to the end of the frame that answers it. */
async function untilDrawn(page: Page, act: () => Promise<void>): Promise<number> {
  await page.evaluate(() => {
    const drawn = new Promise<number>((resolve) => {
      const onKey = () => {
        const pressed = performance.now();
        requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - pressed)));
      };
      window.addEventListener('keydown', onKey, { capture: true, once: true });
    });
    Reflect.set(window, 'measured', drawn);
  });
  await act();
  return page.evaluate(() => Reflect.get(window, 'measured'));
}

/** Scrolls from top to foot in a hundred steps, one a frame, and times the frames. */
function scrollThrough(): Promise<{ median: number; slow: number }> {
  return new Promise((resolve) => {
    const steps = 100;
    const spent: number[] = [];
    let last = performance.now();
    const step = (at: number) => {
      window.scrollTo(0, ((document.documentElement.scrollHeight - innerHeight) * at) / steps);
      requestAnimationFrame(() => {
        const now = performance.now();
        spent.push(now - last);
        last = now;
        if (at < steps) return step(at + 1);
        spent.sort((a, b) => a - b);
        resolve({ median: spent[50] ?? 0, slow: spent[98] ?? 0 });
      });
    };
    step(0);
  });
}
