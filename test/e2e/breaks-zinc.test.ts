import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { type LedgerPage, type Row, type RowsHeld, rowWith, type TableName } from '@provinghouse/contract';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import { type DemoServer, demoCampaign, serveDemo } from './demo-server.ts';

let server: DemoServer;
let browser: Browser;

/** A piece that nobody has pulled yet, so that its zinc can be read as received. */
const fresh = 'ASH-8-9';

before(async () => {
  server = await serveDemo();
  browser = await launchChromium();
  const piece = rowWith('pieces', { piece: fresh, sample: 'ASH-8-S1', links: 3, gauged_over: 'zinc' });
  const reply = await fetch(`${server.address}/api/campaigns/${demoCampaign}/records`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rows: { pieces: [piece] }, who: 'wren' }),
  });
  assert.equal(reply.status, 200);
});

after(async () => {
  await browser?.close();
  await server?.close();
});

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly faults: readonly string[];
}

/** A page of a browser in which one person is at the bench; records what goes wrong in it. */
async function openAs(person: string | null, path: string, colorScheme: 'light' | 'dark' = 'light'): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, colorScheme });
  if (person !== null) await context.addInitScript((name) => localStorage.setItem('provinghouse-person', name), person);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  await page.goto(`${server.address}/c/${demoCampaign}/${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { context, page, faults };
}

async function rowsOf<T extends TableName>(kind: T): Promise<Row<T>[]> {
  const reply = await fetch(`${server.address}/api/campaigns/${demoCampaign}/records/${kind}?limit=2000`);
  const held = (await reply.json()) as RowsHeld<T>; // the server of this build sends the shape of the contract
  return held.rows.map(({ body }) => body);
}

/** The reasons in the ledger, the newest first. */
async function reasonsKept(): Promise<string[]> {
  const reply = await fetch(`${server.address}/api/campaigns/${demoCampaign}/ledger`);
  const { entries } = (await reply.json()) as LedgerPage; // the server of this build sends the shape of the contract
  return entries.toSorted((a, b) => b.seq - a.seq).map(({ why }) => why);
}

async function type(page: Page, ...keys: readonly string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

/** Presses Tab until the element in focus has this name: only what a keyboard reaches is found. */
async function tabTo(page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press(key);
    const words = await page.locator(':focus').evaluateAll((found) =>
      found.map((one) => {
        const isField = one instanceof HTMLInputElement || one instanceof HTMLTextAreaElement;
        const labels = isField ? [...(one.labels ?? [])] : [];
        return [one.textContent, one.getAttribute('aria-label'), ...labels.map((label) => label.textContent)].join(' ');
      }),
    );
    if (words.some((text) => name.test(text))) return;
  }
  assert.fail(`${key} never reaches ${name}`);
}

describe('a break', () => {
  test('is read with the keyboard alone, and the other readers’ word is not seen before one’s own is kept', async () => {
    const { context, page, faults } = await openAs('wren', 'breaks/P-001');
    const main = page.locator('main');
    await main.getByText('2 other people have read it.').waitFor();
    assert.doesNotMatch((await main.textContent()) ?? '', /plover|trim mark at|drawn back/);
    await type(page, '5', 'w', 'h');
    await page.getByRole('radio', { name: 'Link 5' }).and(page.locator(':checked')).waitFor();
    await tabTo(page, /What else was seen/);
    await page.keyboard.type('dull, aslant');
    await tabTo(page, /Keep this reading/);
    await type(page, 'Enter');
    await page.getByText('Three readers differ').waitFor();
    for (const reader of ['wren', 'plover', 'teal'])
      await page.getByRole('cell', { name: reader, exact: true }).waitFor();
    const kept = (await rowsOf('breaks')).find((row) => row.pull === 'P-001' && row.examiner === 'wren');
    assert.deepEqual(kept, {
      pull: 'P-001',
      link: 5,
      examiner: 'wren',
      position: 'weld',
      mode: 'shear',
      note: 'dull, aslant',
    });
    // Whoever has just kept one goes on with Enter.
    await type(page, 'Enter');
    await page.getByRole('heading', { level: 1, name: 'Break of DAMSON-10-5' }).waitFor();
    await page.goBack();
    await page.getByText('Three readers differ').waitFor();
    assert.deepEqual(faults, []);
    await context.close();
  });

  test('is asked for what is missing, and about what does not fit, in place', async () => {
    const { context, page } = await openAs('robin', 'breaks/P-003');
    await type(page, 'Enter');
    const alerts = page.getByRole('alert');
    await alerts.first().waitFor();
    assert.equal(await alerts.count(), 3);
    await type(page, '3', 'i', 'd');
    assert.equal(await alerts.count(), 0);
    await type(page, 'Enter');
    await page.getByText('Link 3 hangs free between the grips').waitFor();
    assert.equal((await rowsOf('breaks')).filter(({ examiner }) => examiner === 'robin').length, 0);
    // What was typed outlives a reload.
    await page.reload();
    await page.getByRole('radio', { name: 'Link 3' }).and(page.locator(':checked')).waitFor();
    await type(page, '0', 'i', 'Enter');
    await page.getByText('gripped link').first().waitFor();
    const rows = await rowsOf('breaks');
    assert.deepEqual(
      rows.filter(({ examiner }) => examiner === 'robin').map(({ link, position, mode }) => [link, position, mode]),
      [[0, 'in grip', 'ductile cup-and-cone']],
    );
    assert.ok((await rowsOf('people')).some(({ person }) => person === 'robin'));
    await context.close();
  });

  test('put right after it was asked about is kept at once', async () => {
    const { context, page } = await openAs('robin', 'breaks/P-004');
    await type(page, '3', 'i', 'd', 'Enter');
    await page.getByText('Link 3 hangs free between the grips').waitFor();
    await type(page, '0', 'Enter');
    await page.getByRole('cell', { name: 'robin', exact: true }).waitFor();
    await context.close();
  });

  test('takes a press on the drawing for a press on its name', async () => {
    const { context, page } = await openAs('wren', 'breaks/P-002');
    for (const [region, name] of [
      [3, 'Link 3'],
      [8, 'Weld'],
      [10, 'In the grip'],
    ] as const) {
      const path = page.locator('.drawn-region path').nth(region);
      await path.scrollIntoViewIfNeeded();
      const box = await path.boundingBox();
      assert.ok(box);
      // A link lies under its neighbours in the middle: it is pressed near its upper edge.
      await page.mouse.click(box.x + box.width / 2, box.y + Math.min(box.height / 2, 5));
      await page.getByRole('radio', { name, exact: true }).and(page.locator(':checked')).waitFor();
    }
    await context.close();
  });

  test('is not read by nobody', async () => {
    const { context, page } = await openAs(null, 'breaks/P-002');
    await page.getByText('Say who you are before you read').waitFor();
    assert.equal(await page.getByRole('radio').count(), 0);
    await page.locator('main').getByRole('button', { name: 'Who is it?' }).press('Enter');
    await page.getByLabel('Short name').fill('heron');
    await type(page, 'Enter');
    await page.getByRole('radio', { name: 'Link 1' }).waitFor();
    await context.close();
  });

  test('is corrected with a reason; the reading before stays in the ledger', async () => {
    const { context, page } = await openAs('plover', 'breaks/P-001');
    await page.getByRole('button', { name: 'Correct the reading of plover, link 5' }).press('Enter');
    await page.getByLabel('how').selectOption('unclear');
    await page.getByRole('button', { name: 'Keep the correction' }).press('Enter');
    await page.getByRole('alert').waitFor();
    await page.getByLabel('Why is it corrected?').fill('the lens shows both');
    await page.getByRole('button', { name: 'Keep the correction' }).press('Enter');
    await page.getByRole('cell', { name: 'unclear' }).waitFor();
    const reasons = await reasonsKept();
    assert.equal(reasons[0], 'the lens shows both');
    await context.close();
  });

  test('keeps its photographs, and refuses what is no picture', async () => {
    const { context, page } = await openAs('wren', 'breaks/P-002');
    const input = page.locator('input[type=file]');
    const buffer = await page.screenshot({ type: 'png', clip: { x: 0, y: 0, width: 40, height: 30 } });
    await input.setInputFiles({ name: 'face.png', mimeType: 'image/png', buffer });
    const image = page.getByRole('button', { name: /Photograph of DAMSON-10-5/ }).locator('img');
    await image.waitFor();
    await image.scrollIntoViewIfNeeded();
    // It is the picture that was taken, as the browser decodes what the record gives back.
    await page.waitForFunction(() => {
      const shown = document.querySelector('.photograph img');
      return shown instanceof HTMLImageElement && shown.naturalWidth === 40 && shown.naturalHeight === 30;
    });
    await input.setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') });
    await page.getByText('“notes.txt” is no picture').waitFor();
    await page.goto(`${server.address}/c/${demoCampaign}/p/DAMSON-10-5`);
    await page.getByRole('button', { name: /Photograph of DAMSON-10-5/ }).waitFor();
    await context.close();
  });
});

describe('zinc', () => {
  const read = async () =>
    (await rowsOf('zinc'))
      .filter(({ piece }) => piece === fresh)
      .map(({ link, reading, thickness_um }) => [link, reading, thickness_um]);

  test('three readings take their digits and Enter, no more; a slip is asked about; the last one is taken back', async () => {
    const { context, page, faults } = await openAs('wren', `zinc/${fresh}`);
    // The gauge of the demonstration has no certificate in force any more: it is asked why it is used.
    await page.keyboard.type('84');
    await type(page, 'Enter');
    await page.getByText('Say above why a gauge').waitFor();
    await tabTo(page, /Why it is used all the same/, 'Shift+Tab');
    await page.keyboard.type('demonstration');
    await tabTo(page, /Link 1, reading 1/);
    await type(page, 'Enter');
    await page.getByText('Link 1, reading 2').first().waitFor();
    await page.keyboard.type('85,5\r91\r');
    await page.getByRole('button', { name: 'Correct link 1, reading 3: 91 µm' }).waitFor();
    assert.deepEqual(await read(), [
      [1, 1, 84],
      [1, 2, 85.5],
      [1, 3, 91],
    ]);
    await page.keyboard.type('880\r');
    await page.getByText('88 µm would fit').waitFor();
    assert.equal((await read()).length, 3);
    await type(page, 'Escape');
    await page.keyboard.type('88\r');
    await page.getByRole('button', { name: /Correct link 1, reading 4: 88/ }).waitFor();
    await type(page, 'u');
    await page.getByText('Taken back: Link 1, reading 4, 88 µm').waitFor();
    assert.equal((await read()).length, 3);
    const reasons = await reasonsKept();
    assert.equal(reasons[0], 'keyed wrong, taken back at once');
    assert.ok(reasons.some((why) => /without a certificate in force for COAT-1: demonstration/.test(why)));
    assert.deepEqual(faults, []);
    await context.close();
  });

  test('what is no thickness is said in place, and nothing of it is kept', async () => {
    const { context, page } = await openAs('wren', `zinc/${fresh}`);
    const before = await read();
    await page.getByLabel('Read with').selectOption('');
    const field = page.getByLabel('Link 1, reading 4');
    for (const wrong of ['', '8 4', '-5', '1,234,5']) {
      await field.fill(wrong);
      await field.press('Enter');
      await page.getByRole('alert').waitFor();
    }
    await field.fill('0,4');
    await field.press('Enter');
    await page.getByText('next to no zinc').waitFor();
    assert.deepEqual(await read(), before);
    await context.close();
  });

  test('typed while the server is away, nothing is lost, and all is kept once it is back', async () => {
    const { context, page } = await openAs('wren', `zinc/${fresh}`);
    await page.getByLabel('Read with').selectOption('');
    const count = (await read()).length;
    await page.getByLabel('Link 1, reading 4').focus();
    await context.setOffline(true);
    await page.keyboard.type('79\r81\r');
    await page.getByText('2 entries wait in this browser').waitFor();
    assert.equal((await read()).length, count);
    await context.setOffline(false);
    await page.getByRole('button', { name: /Correct link 1, reading 5: 81/ }).waitFor();
    await page.getByText('Link 2, reading 1').first().waitFor();
    assert.equal((await read()).length, count + 2);
    await context.close();
  });

  test('adherence is read by number keys and asked about where the bare share does not fit', async () => {
    const { context, page } = await openAs('wren', 'zinc/ASH-8-1');
    const form = page.locator('form.reading-form');
    await form.getByRole('radio', { name: 'Link 1' }).and(page.locator(':checked')).waitFor();
    await type(page, '3');
    await page.getByLabel(/Bare share/).fill('30');
    await tabTo(page, /Keep, and go to the next link/);
    await type(page, 'Enter');
    await page.getByText('Grade 3 stands for under 10 %').waitFor();
    await page.getByLabel(/Bare share/).fill('6,5');
    await type(page, 'Enter');
    await page.getByRole('button', { name: 'Correct the adherence of link 1' }).waitFor();
    const row = (await rowsOf('zinc')).find(({ piece, link }) => piece === 'ASH-8-1' && link === 1);
    assert.deepEqual([row?.adherence, row?.flaked_share_pct, row?.thickness_um, row?.by], [3, 6.5, null, 'wren']);
    // The next link that nobody looked at is at hand: link 2 was read before.
    await form.getByRole('radio', { name: 'Link 3' }).and(page.locator(':checked')).waitFor();
    await context.close();
  });
});

for (const ground of ['light', 'dark'] as const) {
  test(`axe finds nothing in Breaks and Zinc on a ${ground} ground, and every drawing has its words`, async () => {
    for (const [person, path] of [
      ['wren', 'breaks/P-004'],
      ['teal', 'breaks/P-001'],
      ['wren', `zinc/${fresh}`],
    ] as const) {
      const { context, page } = await openAs(person, path, ground);
      await page.waitForLoadState('networkidle');
      assert.deepEqual(await violations(page), [], path);
      for (const drawing of await page.locator('svg.drawn-base').all())
        assert.match((await drawing.getAttribute('aria-label')) ?? '', /\w+ \w+ \w+/);
      await context.close();
    }
  });
}

test('what is pressed at the bench is 44 pixels high or more', async () => {
  for (const path of ['breaks/P-004', 'zinc/ASH-8-1']) {
    const { context, page } = await openAs('wren', path);
    const boxes = await page
      .locator(
        'main .drawn-head, main .press:not(.press-small), main .survey-value, main summary, main input[type=text]',
      )
      .evaluateAll((found) => found.map((one) => [one.textContent, one.getBoundingClientRect().height] as const));
    assert.ok(boxes.length > 10);
    for (const [words, height] of boxes) assert.ok(height >= 44, `${words}: ${height} px high`);
    await context.close();
  }
});
