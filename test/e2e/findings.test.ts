import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, before, describe, test } from 'node:test';
import type { CampaignFinding } from '@provinghouse/contract';
import type { Browser, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import { type DemoServer, demoCampaign, serveDemo } from './demo-server.ts';
import type { EmptyBench } from './empty-bench.ts';
import { blindCampaign, codeOf, type Stage, serveStages, suppliers } from './findings-bench.ts';
import { readFinding } from './screens.ts';

let demo: DemoServer;
let stages: EmptyBench;
let browser: Browser;
let finding: CampaignFinding;

before(async () => {
  demo = await serveDemo();
  stages = await serveStages();
  finding = await readFinding(demo.address, demoCampaign);
  browser = await launchChromium();
});

after(async () => {
  await browser?.close();
  await demo?.close();
  await stages?.close();
});

interface Opened {
  readonly page: Page;
  readonly faults: string[];
}

async function open(query = '', options: { readonly colorScheme?: 'light' | 'dark' } = {}): Promise<Opened> {
  return openAt(`${demo.address}/c/${demoCampaign}/findings${query}`, options);
}

async function openAt(url: string, options: { readonly colorScheme?: 'light' | 'dark' } = {}): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  context.setDefaultTimeout(15_000);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(url);
  await page.getByRole('heading', { level: 1, name: 'Findings' }).waitFor();
  // The last part of a campaign that claims anything; without it the page stands at once.
  await page.locator('#limits, a[href$="/brief"].press').first().waitFor();
  return { page, faults };
}

/** All values that are held against a requirement. */
function judgedValues() {
  return finding.pieces.flatMap((piece) =>
    piece.judgements.map((judgement) => ({ piece: piece.piece, product: piece.product, ...judgement })),
  );
}

/** Values against requirements as the page shows them: piece and verdict of every row. */
async function rowsShown(page: Page): Promise<string[]> {
  return page
    .locator('.found-rows tbody tr:not(.found-group)')
    .evaluateAll((rows) =>
      rows.map((row) => `${row.querySelector('th')?.textContent} ${row.querySelector('.verdict')?.textContent}`),
    );
}

const unfold = (page: Page) => page.getByRole('button', { name: 'Unfold everything' }).click();

describe('what is shown', () => {
  test('a filter stands in the address, and the address gives the same view again', async () => {
    const { page, faults } = await open();
    await page.getByLabel('Verdict').selectOption('does not conform');
    await page.getByLabel('Words').fill('birch weld');
    await page.waitForURL(/words=/);
    await page.locator('.found-rows').first().waitFor();
    const kept = new URL(page.url());
    const before = { rows: await rowsShown(page), said: await page.locator('.findings-shown p').textContent() };
    const expected = judgedValues().filter(
      ({ verdict, limit, product }) =>
        verdict === 'does not conform' && product.startsWith('BIRCH') && limit.quantity === 'weldDiameter',
    );
    assert.ok(expected.length > 0);
    assert.deepEqual(
      before.rows,
      expected.map(({ piece, verdict }) => `${piece} ${verdict}`),
    );
    const hidden = judgedValues().length - expected.length;
    assert.match(before.said ?? '', new RegExp(`^${expected.length} of .*; ${hidden} hidden`));
    await page.reload();
    await page.locator('.found-rows').first().waitFor();
    assert.deepEqual(
      { rows: await rowsShown(page), said: await page.locator('.findings-shown p').textContent() },
      before,
    );
    const other = await openAt(kept.href);
    await other.page.locator('.found-rows').first().waitFor();
    assert.deepEqual(await rowsShown(other.page), before.rows);
    assert.deepEqual(faults, []);
    await page.context().close();
    await other.page.context().close();
  });

  test('by product and by requirement the same values stand, each with its verdict', async () => {
    const expected = judgedValues()
      .map(({ piece, verdict }) => `${piece} ${verdict}`)
      .sort();
    for (const query of ['', '?by=requirement']) {
      const { page } = await open(query);
      await unfold(page);
      assert.deepEqual((await rowsShown(page)).sort(), expected, query);
      await page.context().close();
    }
  });

  test('a filter for a product hides the others throughout and says so', async () => {
    const [first, ...others] = finding.products.map(({ product }) => product);
    const { page } = await open(`?product=${first}`);
    assert.match(
      (await page.locator('.findings-shown p').textContent()) ?? '',
      new RegExp(`${others.length} products hidden`),
    );
    for (const part of ['summary', 'breaks', 'zinc', 'long-chain']) {
      const words = (await page.locator(`#${part}`).textContent()) ?? '';
      assert.ok(words.includes(first ?? ''), part);
      for (const other of others) assert.ok(!words.includes(other), `${part}: ${other}`);
    }
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.waitForURL((url) => url.search === '');
    await page.context().close();
  });

  test('a filter that nothing meets says so and how to get back', async () => {
    const { page } = await open('?words=nosuchthing');
    await page.getByText('Nothing is like that.').waitFor();
    await page.goBack();
    await page.context().close();
  });
});

describe('parts that fold', () => {
  test('a fold made by keyboard is kept for the visit, and an anchor opens its part', async () => {
    const { page } = await open();
    const zinc = page.locator('#zinc');
    await zinc.locator('summary').focus();
    await page.keyboard.press('Enter');
    assert.equal(await zinc.getAttribute('open'), null);
    await page.reload();
    await zinc.locator('summary').waitFor();
    assert.equal(await zinc.getAttribute('open'), null);
    await page.getByRole('navigation', { name: 'On this page' }).getByRole('link', { name: 'Zinc' }).click();
    await zinc.locator('table').first().waitFor();
    await page.waitForFunction(() => document.activeElement?.closest('details')?.id === 'zinc');
    await page.context().close();
  });

  test('an address with an anchor opens the part it names', async () => {
    const product = finding.products[2]?.product;
    const { page } = await open(`#product-${product}`);
    await page.locator(`#product-${product} table`).first().waitFor();
    await page.context().close();
  });

  test('figures are drawn when they come near; print unfolds and draws everything', async () => {
    const { page } = await open();
    await page.locator('#long-chain figure').first().waitFor({ state: 'attached' });
    const drawn = () => page.locator('figure svg').count();
    const figures = () => page.locator('figure.statistic').count();
    assert.ok((await drawn()) < (await figures()) / 2, 'far figures wait');
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    await page.locator('.found-rows').first().waitFor();
    assert.equal(await page.locator('details.fold:not([open])').count(), 0);
    await page.waitForFunction(
      () => document.querySelectorAll('figure.statistic').length === document.querySelectorAll('figure svg').length,
    );
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await page.locator('.found-rows').first().waitFor({ state: 'detached' });
    await page.context().close();
  });
});

/** Opens every number that a selector names, a handful at a time, and gives what stood in each that explains nothing. */
async function unexplained(page: Page, numbers: string): Promise<{ opened: number; bad: string[] }> {
  return page.evaluate(async (within) => {
    const buttons = [...document.querySelectorAll<HTMLButtonElement>(within)];
    const bad: string[] = [];
    const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 0)));
    const shown = () => [...document.querySelectorAll('.origin')].filter((one) => one.querySelector('h3') !== null);
    const until = async (count: number) => {
      for (let tries = 0; tries < 200 && shown().length !== count; tries += 1) await frame();
    };
    let opened = 0;
    for (let at = 0; at < buttons.length; at += 25) {
      const some = buttons.slice(at, at + 25);
      for (const button of some) button.click();
      await until(some.length);
      for (const one of shown()) {
        opened += 1;
        const title = one.querySelector('h3')?.textContent ?? '';
        const words = (one.textContent ?? '').slice(title.length).trim();
        const lines = [...one.querySelectorAll('.how-found dd')].map((line) => line.textContent?.trim() ?? '');
        if (title === '' || words.length < 20 || lines.includes('') || /undefined|NaN|null|\[object/.test(words))
          bad.push(`${title}: ${words}`);
      }
      for (const button of some) button.click();
      await until(0);
    }
    return { opened, bad };
  }, numbers);
}

describe('numbers', () => {
  for (const [query, numbers] of [
    ['', 'button.opens'],
    ['?by=requirement', '[id^="requirement-"] button.opens'],
  ] as const) {
    test(`every number that opens tells how it came about: ${numbers}`, async () => {
      const { page, faults } = await open(query);
      await unfold(page);
      await page.locator('.found-rows').last().waitFor();
      const all = await page.locator(numbers).count();
      const { opened, bad } = await unexplained(page, numbers);
      assert.deepEqual(bad, []);
      assert.equal(opened, all);
      // Of each value at least its verdict opens, and of nearly all the value and what it must read.
      assert.ok(opened > 2 * judgedValues().length, `${opened}`);
      assert.deepEqual(faults, []);
      await page.context().close();
    });
  }

  test('a number opens by key, Escape closes it and gives the focus back, each time; a press elsewhere closes it', async () => {
    const { page } = await open();
    const number = page.locator('#summary .opens').nth(1);
    const closes = [...Array(2).fill(() => page.keyboard.press('Escape')), () => page.locator('h1').click()];
    await number.focus();
    for (const close of closes) {
      await page.waitForFunction(() => document.activeElement?.matches('#summary .opens'));
      await page.keyboard.press('Enter');
      await page.getByRole('dialog').waitFor();
      assert.equal(await number.getAttribute('aria-expanded'), 'true');
      await close();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      assert.equal(await number.getAttribute('aria-expanded'), 'false');
    }
    await page.context().close();
  });

  test('numbers that nobody opened do not listen to every press on the page', async () => {
    const { page } = await open();
    assert.ok((await page.locator('.opens').count()) > 100);
    const cdp = await page.context().newCDPSession(page);
    const { result } = await cdp.send('Runtime.evaluate', { expression: 'document' });
    const { listeners } = await cdp.send('DOMDebugger.getEventListeners', { objectId: result.objectId ?? '' });
    const presses = listeners.filter(({ type }) => type === 'mousedown');
    assert.ok(presses.length < 10, `${presses.length}`);
    await page.context().close();
  });

  test('no number in a table stands without opening, but for codes, words and what the record does not hold', async () => {
    const { page } = await open();
    await unfold(page);
    await page.locator('.found-rows').last().waitFor();
    const closed = await page.locator('.found td.num').evaluateAll((cells) =>
      cells
        .filter((cell) => cell.querySelector('button.opens') === null)
        .map((cell) => (cell.textContent ?? '').trim())
        .filter((words) => /[1-9]/.test(words)),
    );
    assert.deepEqual(closed, []);
    await page.context().close();
  });
});

/** The file that a press on the button of a table sends to the reader's disc. */
async function saved(page: Page, title: string): Promise<string> {
  const coming = page.waitForEvent('download');
  await page
    .getByRole('button', { name: new RegExp(`^Save CSV ?: ${title}$`) })
    .first()
    .click();
  return readFile(await (await coming).path(), 'utf8');
}

/** The file of every table, taken where it is handed to the browser: so many downloads at once a browser refuses. */
async function filesOfAll(page: Page): Promise<{ title: string; rows: number; csv: string }[]> {
  return page.evaluate(async () => {
    const handed: Blob[] = [];
    const { createObjectURL } = URL;
    URL.createObjectURL = (content) => {
      if (content instanceof Blob) handed.push(content);
      return createObjectURL(content);
    };
    HTMLAnchorElement.prototype.click = () => undefined;
    const tables = [...document.querySelectorAll('div.found')];
    for (const table of tables) table.querySelector<HTMLButtonElement>('.found-head button')?.click();
    const files = await Promise.all(handed.map((file) => file.text()));
    return tables.map((table, at) => ({
      title: table.querySelector('h3')?.textContent ?? '',
      rows: table.querySelectorAll('tbody tr:not(.found-group)').length,
      csv: files[at] ?? '',
    }));
  });
}

/** Lines of a CSV file as records by the names of its head; quotes as RFC 4180 has them. */
function recordsOf(csv: string): Record<string, string>[] {
  const cells = [...csv.matchAll(/("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n)/g)];
  const lines: string[][] = [[]];
  for (const [, cell = '', end] of cells) {
    lines.at(-1)?.push(cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell);
    if (end === '\r\n') lines.push([]);
  }
  const [head = [], ...rows] = lines.filter((line) => line.length > 0);
  return rows.map((row) => Object.fromEntries(head.map((name, at) => [name, row[at] ?? ''])));
}

describe('tables and figures to take along', () => {
  test('the file of a table holds the numbers of the finding, and the page shows them rounded', async () => {
    const { page } = await open();
    const rows = recordsOf(await saved(page, 'Breaking force'));
    assert.equal(rows.length, finding.products.length);
    const table = page.getByRole('table', { name: 'Breaking force', exact: true });
    for (const [at, { product, breakingForce }] of finding.products.entries()) {
      const row = rows[at] ?? {};
      assert.equal(row.product, product);
      for (const [key, value] of [
        ['n', breakingForce.n],
        ['mean_kN', breakingForce.mean],
        ['sd_kN', breakingForce.sd],
        ['least_kN', breakingForce.least],
      ] as const)
        assert.equal(row[key], value === null ? '' : String(Number(value.toPrecision(12))), `${product} ${key}`);
      const shown = (await table.getByRole('row', { name: product }).getByRole('cell').nth(1).textContent()) ?? '';
      assert.equal(shown, `${Number(row.mean_kN).toFixed(2)}kN`);
    }
    await page.context().close();
  });

  test('every table saves as many rows as it shows', async () => {
    const { page } = await open('?by=requirement');
    await unfold(page);
    await page.locator('.found-rows').last().waitFor();
    const tables = await filesOfAll(page);
    assert.ok(tables.length > 30, `${tables.length}`);
    for (const { title, rows, csv } of tables) assert.equal(recordsOf(csv).length, rows, title);
    await page.context().close();
  });

  test('the values against a requirement save with limit, uncertainty, verdict and reason', async () => {
    const { page } = await open('?by=requirement&requirement=breakingForce');
    const rows = recordsOf(await saved(page, 'Every product and piece against the breaking force'));
    const expected = judgedValues().filter(({ limit }) => limit.quantity === 'breakingForce');
    assert.deepEqual(
      rows.map((row) => [row.piece, row.verdict, row.reason, row.limit_from]),
      expected.map(({ piece, verdict, reason, limit }) => [piece, verdict, reason, String(limit.lower)]),
    );
    for (const [at, { measured }] of expected.entries())
      assert.equal(rows[at]?.value, measured === null ? '' : String(Number(measured.value.toPrecision(12))));
    await page.context().close();
  });

  test('the steps of steel and size are drawn, with the numbers of the finding in their table', async () => {
    const { page } = await open();
    const figure = page.locator('figure', { hasText: 'Steel or size' }).first();
    await figure.scrollIntoViewIfNeeded();
    await figure.locator('svg').waitFor();
    const coming = page.waitForEvent('download');
    await figure.getByRole('button', { name: /^Save CSV/ }).click();
    const rows = recordsOf(await readFile(await (await coming).path(), 'utf8'));
    for (const row of rows) {
      const split = finding.products.find(({ product }) => product === row.product)?.split;
      assert.ok(split);
      assert.ok(Math.abs(Number(row.step_by_size_pct) - 100 * (split.sizeFactor - 1)) < 1e-9);
      assert.ok(Math.abs(Number(row.together_pct) - 100 * ((split.totalFactor ?? Number.NaN) - 1)) < 1e-9);
    }
    assert.ok(rows.length > 0);
    await page.context().close();
  });
});

describe('campaigns half done', () => {
  const cases: readonly (readonly [stage: Stage, words: RegExp, link: string])[] = [
    ['nothing', /Nothing is claimed yet/, 'Go to the Brief'],
    ['products', /No piece was cut yet/, 'Go to Samples'],
    ['pieces', /No piece was pulled yet/, 'Go to Pulls'],
    ['pulls', /no break was read/, 'Go to Breaks'],
  ];
  for (const [stage, words, link] of cases) {
    test(`a campaign with ${stage} says what comes next and shows no empty table`, async () => {
      const { page, faults } = await openAt(`${stages.address}/c/${codeOf(stage)}/findings`);
      await page.getByText(words).first().waitFor();
      await page.getByRole('link', { name: link }).first().waitFor();
      if (stage !== 'nothing') await unfold(page);
      const empty = await page
        .locator('.found table')
        .evaluateAll((tables) => tables.filter((table) => table.querySelectorAll('tbody tr').length === 0).length);
      assert.equal(empty, 0);
      assert.doesNotMatch((await page.locator('main').textContent()) ?? '', /NaN|Infinity|undefined/);
      assert.deepEqual(faults, []);
      await page.context().close();
    });
  }

  test('a campaign without zinc or second readers says so in words', async () => {
    const { page } = await openAt(`${stages.address}/c/${codeOf('breaks')}/findings`);
    await page.getByText('No zinc was read in this campaign.').waitFor();
    await page.getByText('No break was read by a second person').waitFor();
    assert.equal(await page.locator('#breaks table').count(), 3);
    await page.context().close();
  });

  test('a blind campaign says so and names no supplier', async () => {
    const { page } = await openAt(`${stages.address}/c/${blindCampaign}/findings`);
    await page.getByText('This campaign is blind.').waitFor();
    await unfold(page);
    const words = (await page.locator('main').textContent()) ?? '';
    for (const supplier of suppliers) assert.ok(!words.includes(supplier), supplier);
    assert.ok(!words.includes('6.50'), 'no price');
    assert.match(words, /Product A/);
    await page.context().close();
  });
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing on the unfolded page and in what opens, on a ${colorScheme} ground`, async () => {
    const { page } = await open('?product=FIR-10', { colorScheme });
    await unfold(page);
    await page.locator('.found-rows').last().waitFor();
    await page.locator('#summary .opens').nth(1).click();
    await page.getByRole('dialog').waitFor();
    assert.deepEqual(await violations(page), []);
    await page.context().close();
  });
}
