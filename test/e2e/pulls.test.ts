import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, afterEach, before, beforeEach, describe, test } from 'node:test';
import type { Row } from '@provinghouse/contract';
import { judgeCampaign, ledgerPage, readTraceFile } from '@provinghouse/service';
import { rowsOf } from '@provinghouse/service/entry';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import { benchCampaign, type PullsBench, servePullsBench, unplanned } from './pulls-bench.ts';

const demo = (name: string) => new URL(`../../examples/sallow-reach/traces/${name}`, import.meta.url).pathname;
/** A real recording; its origin stands in the README beside it. */
const openTrace = new URL('../../packages/core/test/reference/open-traces/46NT71.csv', import.meta.url).pathname;

let browser: Browser;
let bench: PullsBench;
let context: BrowserContext;
let page: Page;
let folder: string;

before(async () => {
  browser = await launchChromium();
  folder = await mkdtemp(join(tmpdir(), 'provinghouse-dropped-'));
});

after(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

beforeEach(async () => {
  bench = await servePullsBench();
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  page = await context.newPage();
  // A bench that is not the one served from a command line: files wait, and leaving is meant.
  page.on('dialog', (dialog) => void dialog.accept());
  await open(benchCampaign);
});

afterEach(async () => {
  await context.close();
  await bench.close();
});

async function open(code: string): Promise<void> {
  await page.goto(`${bench.address}/c/${code}/pulls`);
  await page.getByRole('heading', { level: 1, name: 'Pulls' }).waitFor();
}

async function made(name: string, content: string | Uint8Array): Promise<string> {
  const file = join(folder, name);
  await writeFile(file, content);
  return file;
}

const choose = (...files: string[]) => page.getByLabel('Choose files').setInputFiles(files);
const item = (name: string) => page.getByRole('listitem', { name });
const list = () => page.locator('.pulls-list');
const rowOf = (piece: string) =>
  list()
    .getByRole('row')
    .filter({ has: page.getByRole('link', { name: piece, exact: true }) });

async function fill(of: { piece: string; rig?: string; when?: string }): Promise<void> {
  await page.getByLabel('Piece', { exact: true }).selectOption(of.piece);
  await page.getByLabel('Rig', { exact: true }).selectOption(of.rig ?? 'RIG-1');
  await page.getByLabel('When').fill(of.when ?? '2026-03-09T10:00');
}

async function accept(): Promise<void> {
  await page.locator('.pulls-stale:empty').waitFor({ state: 'attached' });
  await page.getByRole('button', { name: 'Accept as a pull' }).click();
}

const pulls = (code = benchCampaign): Promise<Row<'pulls'>[]> => rowsOf(bench.effects.store, code, 'pulls');

/** What the ledger holds of pulls, the newest first. */
async function pullEntries() {
  const asked = { before: null, limit: 100, search: '', kinds: ['pulls'] };
  return (await ledgerPage(benchCampaign, asked, bench.effects))?.entries ?? [];
}

const ramp = (head: string, row: (t: number, force_kN: number) => string, count = 60) =>
  `${head}\n${Array.from({ length: count }, (_, at) => row(at / 10, at < 5 || at > count - 6 ? 0 : ((at - 5) * 48) / count)).join('\n')}\n`;

describe('a file that is dropped', () => {
  test('is looked at, its piece confirmed by hand, and stands in the list with the maximum the reading gives', async () => {
    await page.locator('input[type=file]').waitFor({ state: 'attached' });
    const bytes = readFileSync(demo('ash-8-1.csv')).toString('base64');
    // Dropped as a hand does, not by way of the key.
    await page.evaluate(
      ([content, name]) => {
        const data = Uint8Array.from(atob(content ?? ''), (letter) => letter.charCodeAt(0));
        const transfer = new DataTransfer();
        transfer.items.add(new File([data], name ?? ''));
        const zone = document.querySelector('.pulls-drop');
        zone?.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
      },
      [bytes, 'ash-8-1.csv'],
    );
    await item('ash-8-1.csv').locator('canvas').waitFor();
    assert.deepEqual(await pulls(), [], 'nothing is kept by looking');
    assert.equal(await page.getByLabel('Piece', { exact: true }).inputValue(), '');
    await page.getByRole('button', { name: 'it is ASH-8-1' }).click();
    await page.getByLabel('Rig', { exact: true }).selectOption('RIG-1');
    await page.getByLabel('When').fill('2026-03-09T10:00');
    await accept();
    const read = await readTraceFile({ file: demo('ash-8-1.csv'), options: {} });
    await rowOf('ASH-8-1')
      .getByText(`${(read.maximumForce_kN ?? 0).toFixed(2)} ±`)
      .waitFor();
    const [row] = await pulls();
    assert.equal(row?.trace, 'traces/P-001.csv');
    assert.deepEqual([row?.time_column, row?.force_column], [null, null], 'the header said it all');
    const finding = await judgeCampaign({ campaign: benchCampaign }, bench.effects);
    assert.equal(finding.pieces.find(({ piece }) => piece === 'ASH-8-1')?.pull?.maximum?.value, read.maximumForce_kN);
    await page.getByText(/kept, ledger entry/).waitFor();
  });

  test('of a real recorder gives the finding the maximum of the same file read by itself', async () => {
    await choose(openTrace);
    await item('46NT71.csv').locator('canvas').waitFor();
    await fill({ piece: 'BIRCH-8-1' });
    await accept();
    await rowOf('BIRCH-8-1').getByText('P-001').waitFor();
    const read = await readTraceFile({ file: openTrace, options: {} });
    const finding = await judgeCampaign({ campaign: benchCampaign }, bench.effects);
    const pull = finding.pieces.find(({ piece }) => piece === 'BIRCH-8-1')?.pull;
    assert.equal(pull?.reading?.maximumForce_kN, read.maximumForce_kN);
  });

  test('with several others has its own code, and each waits for its own piece', async () => {
    await choose(demo('ash-8-1.csv'), demo('birch-8-1.csv'));
    await item('birch-8-1.csv')
      .getByText(/maximum/)
      .waitFor();
    await fill({ piece: 'ASH-8-1' });
    await accept();
    await rowOf('ASH-8-1').getByText('P-001').waitFor();
    await item('birch-8-1.csv').locator('canvas').waitFor();
    assert.equal(await page.getByLabel('Code of the pull').inputValue(), 'P-002');
    await page.getByRole('button', { name: 'it is BIRCH-8-1' }).waitFor();
  });

  test('with two columns like a force is asked about, and never read by a guess', async () => {
    await choose(
      await made(
        'two.csv',
        ramp('time_s,Force [kN],Load [kN]', (at, force) => `${at},${force},${force / 2}`),
      ),
    );
    await item('two.csv').getByText('Several columns could be meant').waitFor();
    assert.equal(await item('two.csv').locator('canvas').count(), 0);
    await fill({ piece: 'ASH-8-1' });
    await page.getByRole('button', { name: 'Accept as a pull' }).click();
    await page.getByText('Settle the columns above first.').waitFor();
    assert.deepEqual(await pulls(), []);
    await page.getByLabel('force', { exact: true }).selectOption({ label: '3: Load [kN]' });
    await item('two.csv').locator('canvas').waitFor();
    await accept();
    await rowOf('ASH-8-1').getByText('P-001').waitFor();
    assert.equal((await pulls())[0]?.force_column, 'Load');
  });

  test('without units is asked for each, and the next one of that rig begins with them and says so', async () => {
    const file = (scale: number) =>
      ramp('t,F,x', (at, force) => `${at},${(force * scale).toFixed(2)},${(force / 9).toFixed(2)}`);
    await choose(await made('first.csv', file(1)));
    await item('first.csv').getByText('The file names no unit for it').first().waitFor();
    await page.getByLabel('unit of time').selectOption('s');
    await page.getByLabel('unit of force').selectOption('kN');
    await item('first.csv').locator('canvas').waitFor();
    await fill({ piece: 'ASH-8-1' });
    await accept();
    await rowOf('ASH-8-1').getByText('P-001').waitFor();
    const [row] = await pulls();
    assert.deepEqual([row?.time_column, row?.force_column], ['t[s]', 'F[kN]']);
    await choose(await made('second.csv', file(1.1)));
    await item('second.csv')
      .getByText(/begins with the columns of P-001.*RIG-1/)
      .waitFor();
    await item('second.csv').locator('canvas').waitFor();
    assert.equal(await page.getByLabel('unit of force').inputValue(), 'kN');
    await page.getByLabel('unit of force').selectOption('lbf');
    await item('second.csv')
      .getByText(/the next file of RIG-1/)
      .waitFor();
  });

  const wrong: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ['empty.csv', '', /This file is empty/],
    [
      'chain.png',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 1, 0]),
      /It may be a picture/,
    ],
    ['letter.txt', 'Dear engineer,\nthe chain is in the post.\n', /two or more numbers/],
  ];
  for (const [name, content, words] of wrong)
    test(`${name} is refused with its cure, and can be put away`, async () => {
      await choose(await made(name, content));
      await item(name).getByText(words).waitFor();
      assert.equal(await page.getByRole('button', { name: 'Accept as a pull' }).count(), 0);
      await item(name)
        .getByRole('button', { name: /Put it away/ })
        .click();
      await item(name).waitFor({ state: 'detached' });
    });

  test('whose bytes are kept already is told with its pull, and is taken only when that is meant', async () => {
    await choose(demo('ash-8-1.csv'));
    await item('ash-8-1.csv').locator('canvas').waitFor();
    await fill({ piece: 'ASH-8-1' });
    await accept();
    await rowOf('ASH-8-1').getByText('P-001').waitFor();
    await choose(demo('ash-8-1.csv'));
    await page.getByText('This recording is already kept as pull P-001 of piece ASH-8-1').waitFor();
    await fill({ piece: 'ASH-8-2' });
    await accept();
    await page.getByText('Say that it is meant, or put the file away.').waitFor();
    assert.equal((await pulls()).length, 1);
  });

  test('of fifty megabytes says how far its sending is, and the server answers others meanwhile', async () => {
    const spare = ',0.000000'.repeat(50);
    const rows = Array.from(
      { length: 110_000 },
      (_, at) => `${(at / 1000).toFixed(3)},${(at < 109_000 ? at / 2500 : 0).toFixed(3)}${spare}`,
    );
    const names = Array.from({ length: 50 }, (_, at) => `,spare ${at}`).join('');
    const file = await made('long.csv', `time_s,force_kN${names}\n${rows.join('\n')}\n`);
    await choose(file);
    await item('long.csv')
      .getByRole('progressbar')
      .or(item('long.csv').getByText('Reading the recording'))
      .first()
      .waitFor();
    assert.equal((await fetch(`${bench.address}/api/campaigns/${benchCampaign}/planned-pulls`)).status, 200);
    await item('long.csv').locator('canvas').waitFor({ timeout: 60_000 });
  });
});

test('a connection lost while sending loses nothing: it is said, and sent again by itself', async () => {
  await context.setOffline(true);
  await choose(demo('ash-8-1.csv'));
  await item('ash-8-1.csv').getByText('The file is not lost').waitFor();
  await context.setOffline(false);
  await item('ash-8-1.csv').locator('canvas').waitFor({ timeout: 15_000 });
});

test('before the plan is frozen a pull is refused, and the way to the Brief is shown', async () => {
  await open(unplanned);
  await page.getByText('The plan is not frozen yet').waitFor();
  await choose(demo('ash-8-1.csv'));
  await item('ash-8-1.csv').locator('canvas').waitFor();
  await fill({ piece: 'ASH-8-1' });
  await accept();
  await page.getByText('Freeze the plan in the Brief before the first pull').waitFor();
  assert.equal(await page.getByRole('link', { name: 'Freeze the plan in the Brief' }).count(), 2);
  assert.deepEqual(await pulls(unplanned), []);
});

test('a rig without a certificate in force is taken only with a reason, which the ledger holds', async () => {
  await choose(demo('ash-8-1.csv'));
  await item('ash-8-1.csv').locator('canvas').waitFor();
  await fill({ piece: 'ASH-8-1', rig: 'RIG-2' });
  await accept();
  const why = page.getByLabel('Why is RIG-2 used without a certificate in force?');
  await why.waitFor();
  assert.deepEqual(await pulls(), []);
  await why.fill('the other rig is away');
  await accept();
  await rowOf('ASH-8-1').getByText('P-001').waitFor();
  assert.match((await pullEntries())[0]?.why ?? '', /RIG-2: the other rig is away/);
});

test('a maximum is read off the panel with a decimal comma and an uncertainty that says where it comes from', async () => {
  await page.getByRole('button', { name: 'Key a panel reading' }).click();
  await fill({ piece: 'ASH-8-2' });
  await page.getByLabel('Maximum on the panel').fill('36,4');
  await page.getByLabel('Finest step that could be read').fill('0,2');
  await page.getByText(/Suggested: 0\.12 kN, one step of 0,2 kN either way.*common practice/).waitFor();
  await page.getByRole('button', { name: 'Keep the reading' }).click();
  await rowOf('ASH-8-2').getByText('panel, by eye').waitFor();
  const [row] = await pulls();
  assert.deepEqual([row?.panel_maximum_kN, row?.panel_uncertainty_kN], [36.4, 0.12]);
  assert.equal(row?.trace, null);
});

async function keyPanel(piece: string, maximum: string): Promise<void> {
  await page.getByRole('button', { name: 'Key a panel reading' }).click();
  await fill({ piece });
  await page.getByLabel('Maximum on the panel').fill(maximum);
  await page.getByRole('button', { name: 'Keep the reading' }).click();
}

test('a second pull of a piece is asked about, and stands beside the first', async () => {
  await keyPanel('ASH-8-2', '36.4');
  await rowOf('ASH-8-2').getByText('P-001').waitFor();
  await keyPanel('ASH-8-2', '37.1');
  await page.getByText('Say what this pull is.').waitFor();
  await page.getByLabel('This piece has P-001 already. What is this one?').selectOption('repeat');
  await page.getByRole('button', { name: 'Keep the reading' }).click();
  await list().getByText('listed, not judged').waitFor();
  assert.equal((await pulls())[1]?.note, 'repeat, after P-001');
});

test('an answer that a later one has overtaken is not shown', async () => {
  const address = `${bench.address}/api/campaigns/${benchCampaign}`;
  const [asked, overtaken] = [Promise.withResolvers<void>(), Promise.withResolvers<void>()];
  await list().waitFor();
  await page.waitForLoadState('networkidle');
  await page.route(
    address,
    async (route) => {
      const response = await route.fetch();
      asked.resolve();
      await overtaken.promise;
      await route.fulfill({ response });
    },
    { times: 1 },
  );
  await keyPanel('ASH-8-2', '36.4');
  await asked.promise;
  await rowOf('ASH-8-2').getByText('P-001').waitFor();
  await keyPanel('ASH-8-1', '37.1');
  await list().getByText('37.1').waitFor();
  const late = page.waitForEvent('requestfinished', (request) => request.url() === address);
  overtaken.resolve();
  await late;
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  for (const maximum of ['36.40', '37.10']) assert.equal(await list().getByText(maximum).count(), 1, maximum);
});

test('a pull is declared invalid with a reason and annotated; what stood there before is in the ledger', async () => {
  await keyPanel('ASH-8-2', '36.4');
  await page.getByRole('button', { name: 'Open P-001' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Declare it invalid' }).click();
  await sheet.getByText('Give the reason.').waitFor();
  await sheet.getByLabel('Why does it not count?').fill('the jaw slipped');
  await sheet.getByRole('button', { name: 'Declare it invalid' }).click();
  await sheet.getByRole('button', { name: 'Let it count again' }).waitFor();
  assert.deepEqual(await violations(page), []);
  await sheet.getByLabel('Note').fill('a bang at 30 kN');
  await sheet.getByRole('button', { name: 'Keep the note' }).click();
  await rowOf('ASH-8-2').getByText('a bang at 30 kN').waitFor();
  await rowOf('ASH-8-2').getByText('the jaw slipped').waitFor();
  const corrections = (await pullEntries()).filter(({ action }) => action === 'correct');
  assert.deepEqual(
    corrections.map(({ why }) => why),
    ['annotated', 'the jaw slipped'],
  );
});

test('of two who annotate one pull the second is told, and loses nothing', async () => {
  await keyPanel('ASH-8-2', '36.4');
  await page.getByRole('button', { name: 'Open P-001' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('Note').fill('mine');
  const [row] = await pulls();
  const correction = {
    kind: 'pulls',
    id: 'P-001',
    revision: 1,
    body: { ...row, note: 'theirs' },
    who: 'other',
    why: 'x',
  };
  const kept = await fetch(`${bench.address}/api/campaigns/${benchCampaign}/corrections`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(correction),
  });
  assert.equal(kept.status, 200);
  await sheet.getByRole('button', { name: 'Keep the note' }).click();
  await sheet.getByText('Somebody changed this pull meanwhile.').waitFor();
  assert.equal(await sheet.getByLabel('Note').inputValue(), 'mine');
  await sheet.locator('dd').getByText('theirs').waitFor();
  await sheet.getByRole('button', { name: 'Keep the note' }).click();
  await rowOf('ASH-8-2').getByText('mine').waitFor();
});

describe('recordings over each other', () => {
  async function bring(): Promise<void> {
    for (const [name, piece] of [
      ['ash-8-1.csv', 'ASH-8-1'],
      ['birch-8-1.csv', 'BIRCH-8-1'],
    ] as const) {
      await choose(demo(name));
      await item(name).locator('canvas').waitFor();
      await fill({ piece });
      await accept();
      await rowOf(piece).getByText(/P-00/).waitFor();
    }
  }

  test('are chosen by product or piece, named in a table, and saved', async () => {
    await bring();
    await page.getByLabel('all of ASH-8').check();
    await page.getByLabel('BIRCH-8-1', { exact: true }).check();
    const figure = page.locator('.pulls-overlay');
    await figure.getByRole('img', { name: /of 2 pulls: 1 ASH-8-1, .*2 BIRCH-8-1.*minimum breaking force/ }).waitFor();
    assert.equal(await figure.locator('tbody tr').count(), 2);
    assert.deepEqual(await violations(page), []);
    await page.getByLabel('Force against', { exact: true }).selectOption('time');
    await figure.getByText('time, s').first().waitFor();
    const saved = async (name: RegExp) => {
      const coming = page.waitForEvent('download');
      await figure.getByRole('button', { name }).click();
      return readFile(await (await coming).path());
    };
    assert.match((await saved(/^Save SVG/)).toString('utf8'), /^(<\?xml[^>]*>\s*)?<svg[\s\S]*<\/svg>\s*$/);
    assert.deepEqual([...(await saved(/^Save PNG/)).subarray(0, 4)], [0x89, 0x50, 0x4e, 0x47]);
    assert.equal((await saved(/^Save CSV/)).toString('utf8').trim().split('\r\n').length, 3);
    assert.ok((await saved(/^Save the points/)).toString('utf8').split('\r\n').length > 500);
  });
});

for (const colorScheme of ['light', 'dark'] as const)
  test(`axe finds nothing on a ${colorScheme} ground, with a file open and a question asked`, async () => {
    await page.emulateMedia({ colorScheme });
    await open(benchCampaign);
    await choose(
      await made(
        'two.csv',
        ramp('time_s,Force [kN],Load [kN]', (at, force) => `${at},${force},${force / 2}`),
      ),
    );
    await item('two.csv').getByText('Several columns could be meant').waitFor();
    assert.deepEqual(await violations(page), []);
    await page.getByLabel('force', { exact: true }).selectOption({ label: '3: Load [kN]' });
    await item('two.csv').locator('canvas').waitFor();
    assert.deepEqual(await violations(page), []);
    await page.getByRole('button', { name: 'Key a panel reading' }).click();
    assert.deepEqual(await violations(page), []);
  });

test('a panel reading is keyed from the first Tab to the last without a mouse', async () => {
  await page.locator('.pulls-choose input').focus();
  await page.keyboard.press('Tab');
  assert.equal(await page.locator(':focus').textContent(), 'Key a panel reading');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  assert.equal(await page.locator(':focus').textContent(), 'Key a panel reading');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type('36,4');
  await page.keyboard.press('Tab');
  await page.keyboard.type('0,2');
  for (const _ of ['uncertainty', 'piece']) await page.keyboard.press('Tab');
  const piece = page.getByLabel('Piece', { exact: true });
  await page.keyboard.press('ArrowDown');
  const next = await piece.inputValue();
  for (const _ of ['code', 'rig']) await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Tab');
  await page.keyboard.type('wren');
  await page.keyboard.press('Enter');
  await rowOf(next).getByText('panel, by eye').waitFor();
  const [row] = await pulls();
  assert.deepEqual([row?.panel_maximum_kN, row?.rig, row?.operator], [36.4, 'RIG-1', 'wren']);
});
