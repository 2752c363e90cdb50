import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import type { CampaignFinding } from '@provinghouse/contract';
import type { Browser } from 'playwright-core';
import { violations } from './audit.ts';
import { launchChromium } from './chromium.ts';
import { type DemoServer, demoCampaign, serveDemo } from './demo-server.ts';
import { sitDown } from './gauging-page.ts';

let bench: DemoServer;
let browser: Browser;
let finding: CampaignFinding;

before(async () => {
  bench = await serveDemo();
  browser = await launchChromium();
  finding = await (await fetch(`${bench.address}/api/campaigns/${demoCampaign}`)).json();
});

after(async () => {
  await browser?.close();
  await bench?.close();
});

/** Pieces whose break more than one person has read: those on which they differ, or those on which they agree. */
function readTwice(isDiffering: boolean) {
  return finding.pieces.filter(
    ({ breaks, examinersDiffer }) =>
      examinersDiffer === isDiffering && new Set(breaks.map(({ examiner }) => examiner)).size > 1,
  );
}

test('the board marks each piece whose readers differ, says on what and which reading counts, and finds them by these words', async () => {
  const differing = readTwice(true);
  assert.ok(differing.length > 0 && readTwice(false).length > 0);
  const { page, context, faults } = await sitDown({ browser, bench }, `/c/${demoCampaign}`);
  assert.equal(await page.locator('.board .readers-differ').count(), differing.length);
  assert.equal(await page.locator('.board').getByText('two readers agree').count(), readTwice(false).length);
  await page.getByText('Under Break: the reading kept first, which is the one counted').waitFor();
  for (const { piece, breaks } of differing) {
    const row = page.locator('.board-piece').filter({ has: page.getByRole('link', { name: piece, exact: true }) });
    const said = (await row.locator('.readers-differ').textContent()) ?? '';
    assert.match(said, /^≠ two readers differ: .+, not settled$/);
    const words = breaks.flatMap(({ position, mode }) => [position, mode]);
    const unlike = [...new Set(words)].filter((word) => words.filter((one) => one === word).length < breaks.length);
    for (const word of unlike) assert.ok(said.includes(word), `${piece}: ${word} in ${said}`);
  }
  await page.getByLabel('Show only pieces with').fill('readers differ');
  await page.waitForFunction((count) => document.querySelectorAll('.board-piece').length === count, differing.length);
  assert.deepEqual(faults, []);
  await context.close();
});

test('the page of a piece shows each reading with its reader and its time, how they agree, and whose reading is counted', async () => {
  const piece = readTwice(true)[0];
  assert.ok(piece);
  const { page, context, faults } = await sitDown({ browser, bench }, `/c/${demoCampaign}/p/${piece.piece}`);
  const part = page.getByRole('region', { name: 'Break', exact: true });
  const [first] = piece.breaks;
  await part.getByText(/^≠ Two readers differ: .+, not settled\.$/).waitFor();
  await part
    .getByText(
      `Counted: ${first?.position}, ${first?.mode}, as ${first?.examiner} read it, whose reading was kept first.`,
    )
    .waitFor();
  await part.getByText('one reader who saw the piece part in the grip is enough').waitFor();
  await part
    .getByText(/^\d{4}-\d\d-\d\d \d\d:\d\d$/)
    .first()
    .waitFor();
  const rows = await part.locator('tbody tr').allTextContents();
  assert.equal(rows.length, piece.breaks.length);
  for (const [at, { examiner, position, mode }] of piece.breaks.entries()) {
    for (const word of [examiner, position, mode]) assert.ok(rows[at]?.includes(word), `${word} in ${rows[at]}`);
    assert.match(rows[at] ?? '', /\d{4}-\d\d-\d\d \d\d:\d\d/);
    assert.equal(rows[at]?.includes('this one'), at === 0);
  }
  assert.deepEqual(await violations(page), []);
  const alike = readTwice(false)[0];
  await page.goto(`${bench.address}/c/${demoCampaign}/p/${alike?.piece}`);
  await part.getByText('Two readers agree.').waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});
