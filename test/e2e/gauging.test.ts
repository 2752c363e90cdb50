import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { type GaugingPlace, gaugingSchedule, placeKey } from '@provinghouse/core';
import type { Browser } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { type GaugingBench, openCampaign, openGaugingBench, rowsKept, seeded } from './gauging-bench.ts';
import { allKept, placeAsked, sitDown } from './gauging-page.ts';

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

/** A value that fits its place, to two decimals, from a seeded generator. */
function valueFor({ quantity }: GaugingPlace, next: () => number): number {
  const middle = { diameter: 8, weldDiameter: 8.4, pitch: 24 }[quantity as 'diameter' | 'weldDiameter' | 'pitch'];
  return Math.round(100 * (middle + 0.16 * (next() - 0.5))) / 100;
}

test('120 readings are typed with one key press beyond the digits each, without a mouse, and the record holds exactly these', async (t) => {
  const pieces = await openCampaign(bench.address, { code: 'SPEED', pieces: 12, links: 2 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/SPEED/gauging');
  await page.getByLabel('Chosen here').check();
  for (const other of ['inside width', 'outside width', 'length over links'])
    await page.getByLabel(other, { exact: true }).uncheck();
  await page.getByRole('button', { name: 'Use this' }).click();
  await page.getByText('120 places to read in all').waitFor();
  await page.goto(`${bench.address}/c/SPEED/gauging/${pieces[0]}`);
  await page.locator('.gauging-box').waitFor();

  const next = seeded(20260309);
  const schedule = gaugingSchedule({ links: 2, quantities: ['diameter', 'weldDiameter', 'pitch'] });
  const typed = pieces.flatMap((piece) =>
    schedule.map((at) => ({ piece, key: placeKey(at), value: valueFor(at, next) })),
  );
  assert.equal(typed.length, 120);
  let digits = 0;
  for (const { value } of typed) {
    const keys = next() < 0.5 ? value.toFixed(2) : value.toFixed(2).replace('.', ',');
    digits += keys.length;
    await page.keyboard.type(keys);
    await page.keyboard.press('Enter');
  }
  await page.getByText('Every place of every piece is read.').waitFor();
  const counts = await page.evaluate(() => Reflect.get(window, 'counts'));
  assert.deepEqual(counts, { digits, enter: 120, other: 0, pointer: 0 });
  const waits: { piece: string; ms: number }[] = await page.evaluate(() => Reflect.get(window, 'waits'));
  const isMove = (at: number) => at > 0 && waits[at]?.piece !== waits[at - 1]?.piece;
  const inOrderOf = (wanted: boolean) =>
    waits.flatMap(({ ms }, at) => (isMove(at) === wanted ? [ms] : [])).toSorted((a, b) => a - b);
  const [withinPiece, toPiece] = [inOrderOf(false), inOrderOf(true)];
  const told = (list: number[]) =>
    `median ${list[Math.floor(list.length / 2)]?.toFixed(1)}, greatest ${list.at(-1)?.toFixed(1)} ms (${list.length})`;
  t.diagnostic(`Enter to next place: within a piece ${told(withinPiece)}; to another piece ${told(toPiece)}`);

  await allKept(page);
  const held = await rowsKept(bench.address, 'SPEED', 'gauging');
  const kept = held.map(({ body }) => ({
    piece: body.piece,
    key: placeKey({
      ...body,
      position: body.position as GaugingPlace['position'],
      quantity: body.quantity as GaugingPlace['quantity'],
    }),
    value: body.value_mm,
  }));
  const inOrder = (list: typeof kept) =>
    list.toSorted((a, b) => (`${a.piece} ${a.key}` < `${b.piece} ${b.key}` ? -1 : 1));
  assert.deepEqual(inOrder(kept), inOrder(typed));
  assert.ok(
    held.every(
      ({ body, revision }) =>
        body.instrument === 'CAL-1' && body.by === 'wren' && body.read_at !== null && revision === 1,
    ),
  );
  assert.deepEqual(faults, []);
  await context.close();
});

test('what does not fit is asked at once and in place: Enter again keeps it, typing replaces it, P takes the proposal', async () => {
  await openCampaign(bench.address, { code: 'ASKED', pieces: 1, links: 3 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/ASKED/gauging/P-1');
  const first = await placeAsked(page);
  await page.keyboard.type('80.2');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-questions').waitFor();
  assert.equal(await placeAsked(page), first);
  assert.equal((await rowsKept(bench.address, 'ASKED', 'gauging')).length, 0);
  await page.keyboard.press('p');
  await page.waitForFunction((was) => document.querySelector('.gauging-place')?.textContent !== was, first);

  // The second reading is asked about and typed over; the third is asked about and kept as it was read.
  await page.keyboard.type('24.1');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-questions').waitFor();
  await page.keyboard.type('  8,03mm');
  await page.keyboard.press('Enter');
  await page.keyboard.type('10.9');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-questions').waitFor();
  await page.keyboard.type('10.9');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-questions').waitFor({ state: 'detached' });
  await page.keyboard.type('abc');
  await page.keyboard.press('Enter');
  await page.locator('.gauging-told .form-fault').waitFor();
  await allKept(page);
  const values = (await rowsKept(bench.address, 'ASKED', 'gauging')).map(({ body }) => body.value_mm);
  assert.deepEqual(values, [8.02, 8.03, 10.9]);
  assert.deepEqual(faults, []);
  await context.close();
});

test('the last reading is taken back, and its place asked again; the record keeps both and the reason', async () => {
  await openCampaign(bench.address, { code: 'UNDO', pieces: 1, links: 2 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/UNDO/gauging/P-1');
  const first = await placeAsked(page);
  for (const value of ['8.11', '8.12']) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+z');
    await page.waitForFunction((was) => document.querySelector('.gauging-place')?.textContent === was, first);
  }
  await page.keyboard.type('8.13');
  await page.keyboard.press('Enter');
  await page.keyboard.press('r');
  await page.getByText('read once more').waitFor();
  await page.keyboard.type('8.14');
  await page.keyboard.press('Enter');
  await page.keyboard.press('s');
  await allKept(page);
  const held = await rowsKept(bench.address, 'UNDO', 'gauging');
  assert.deepEqual(
    held.map(({ body }) => [body.direction, body.repeat, body.value_mm]),
    [
      [1, 1, 8.13],
      [1, 2, 8.14],
    ],
  );
  const ledger = await (await fetch(`${bench.address}/api/campaigns/UNDO/ledger`)).json();
  const gone = ledger.entries.filter(({ action }: { action: string }) => action === 'withdraw');
  assert.deepEqual(
    gone.map(({ why }: { why: string }) => why),
    Array(2).fill('keyed wrong, taken back at once'),
  );
  assert.equal(await page.getByRole('button', { name: /skipped/ }).count(), 1);
  assert.deepEqual(faults, []);
  await context.close();
});

test('a table from a spreadsheet with header and decimal commas is looked at, then kept as one entry; with a fault nothing is', async () => {
  await openCampaign(bench.address, { code: 'PASTE', pieces: 1, links: 3 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/PASTE/gauging/P-1');
  const next = seeded(7);
  const number = (middle: number) => (middle + 0.1 * (next() - 0.5)).toFixed(2).replace('.', ',');
  const lines = [1, 2, 3].map((link) => [link, number(8), number(8), number(24)].join('\t'));
  const paste = (table: string) =>
    page.evaluate((data) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', data);
      document.activeElement?.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    }, table);
  const header = 'link\tdiameter 1\tdiameter 2\tpitch';
  await paste([header, lines[0], lines[1]?.replace(/\t[^\t]*$/, '\tabout 24'), lines[2]].join('\n'));
  const sheet = page.getByRole('dialog');
  await sheet.getByText('1 fault: nothing is kept').waitFor();
  assert.deepEqual((await sheet.locator('tbody td').allTextContents()).slice(0, 2), ['3', 'pitch']);
  assert.equal(await sheet.getByRole('button', { name: /^Keep/ }).count(), 0);
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await paste([header, ...lines].join('\n'));
  await sheet.getByRole('button', { name: 'Keep 9 readings as one entry' }).click();
  await allKept(page);
  const held = await rowsKept(bench.address, 'PASTE', 'gauging');
  const asPasted = lines.flatMap((line) =>
    line
      .split('\t')
      .slice(1)
      .map((cell) => Number(cell.replace(',', '.'))),
  );
  assert.deepEqual(
    held.map(({ body }) => body.value_mm),
    asPasted,
  );
  await paste([header, lines[0]].join('\n'));
  await sheet.getByText('is read already').first().waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});

test('the server is stopped in the middle of typing: typing goes on, a reload loses nothing, and all arrives in order', async () => {
  await openCampaign(bench.address, { code: 'CUT', pieces: 2, links: 3 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/CUT/gauging/P-1');
  const next = seeded(11);
  const values = Array.from({ length: 6 }, () => Math.round(100 * (8 + 0.1 * (next() - 0.5))) / 100);
  const type = async (value: number) => {
    await page.keyboard.type(String(value));
    await page.keyboard.press('Enter');
  };
  // Bars alone are typed here: two of each link, so other quantities are passed over.
  const isBar = async () => /bar diameter/.test(await placeAsked(page));
  let stopped = false;
  for (const [at, value] of values.entries()) {
    while (!(await isBar())) await page.keyboard.press('s');
    if (at === 2) {
      await allKept(page);
      await bench.stop();
      stopped = true;
    }
    await type(value);
  }
  assert.ok(stopped);
  await page.locator('.kept-cut-off').waitFor();
  assert.match((await page.locator('.kept').textContent()) ?? '', /4 entries wait/);
  assert.equal(await page.locator('.gauging-last .gauging-waiting').count(), 4);
  await bench.start();
  await page.reload();
  await page.locator('.gauging-place').waitFor();
  await allKept(page);
  const held = await rowsKept(bench.address, 'CUT', 'gauging');
  assert.deepEqual(
    held.map(({ body }) => body.value_mm),
    values,
  );
  await page.waitForFunction(() => document.querySelectorAll('.gauging-table .gauging-kept').length === 6);
  assert.deepEqual(faults, []);
  await context.close();
});

test('a reading that finds the store of the browser full is not kept, says so, and is sent again when there is room', async () => {
  await openCampaign(bench.address, { code: 'FULL', pieces: 1, links: 2 });
  const { page, context, faults } = await sitDown({ browser, bench }, '/c/FULL/gauging/P-1');
  await page.evaluate(() => {
    for (let size = 1 << 22; size >= 1; size = Math.floor(size / 2)) {
      try {
        for (let at = 0; ; at += 1) localStorage.setItem(`filler ${size} ${at}`, 'x'.repeat(size));
      } catch {}
    }
  });
  await page.keyboard.type('8.03');
  await page.keyboard.press('Enter');
  await page.getByText('the store of this browser is full').waitFor();
  assert.deepEqual(await rowsKept(bench.address, 'FULL', 'gauging'), []);
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith('filler')) localStorage.removeItem(key);
  });
  await page.getByRole('button', { name: 'Send again' }).click();
  await allKept(page);
  const held = await rowsKept(bench.address, 'FULL', 'gauging');
  assert.deepEqual(
    held.map(({ body }) => body.value_mm),
    [8.03],
  );
  assert.deepEqual(faults, []);
  await context.close();
});
