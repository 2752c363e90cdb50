import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import { isStoreError, ledgerEntries, verifyLedger } from '@provinghouse/store';
import {
  commission,
  correctRow,
  enterRows,
  freezePlan,
  holdFile,
  readFileOf,
  rowsHeld,
  unblind,
  withdrawRow,
} from '../../src/entry/index.ts';
import { judgeCampaign, ledgerState } from '../../src/index.ts';
import {
  campaignRow,
  code,
  emptyRecord,
  person,
  piece,
  prepared,
  product,
  pull,
  reading,
  sample,
  who,
} from './desk.ts';

const coded = (wanted: string) => (error: unknown) =>
  (isInputError(error) || isStoreError(error)) && error.code === wanted;
const page = { after: -1, limit: 100 };

test('a campaign is opened empty, and its code is taken then, whatever the case of its letters', async (t) => {
  const effects = await emptyRecord(t);
  assert.deepEqual(await commission({ campaign: campaignRow(), who }, effects), { ledgerSeq: 1 });
  const again = commission({ campaign: campaignRow({ campaign: code.toLowerCase() }), who }, effects);
  await assert.rejects(again, coded('campaign/taken'));
  const finding = await judgeCampaign({ campaign: code }, effects);
  assert.deepEqual(finding.pieces, []);
  assert.equal((await verifyLedger(effects.store, code)).ok, true);
});

test('a campaign without a question is not opened, and the fault is named', async (t) => {
  const effects = await emptyRecord(t);
  await assert.rejects(commission({ campaign: campaignRow({ question: '' }), who }, effects), /question is empty/);
  await assert.rejects(rowsHeldOf(effects), coded('campaign/unknown'));
});

function rowsHeldOf(effects: Parameters<typeof rowsHeld>[3]) {
  return rowsHeld(code, 'campaign', page, effects);
}

test('the same rows sent again change nothing; other cells under the same key are refused', async (t) => {
  const effects = await prepared(t);
  const before = (await ledgerState(code, effects))?.entries;
  await enterRows(code, { rows: { people: [person], products: [product] }, who }, effects);
  assert.equal((await ledgerState(code, effects))?.entries, before);
  const other = { rows: { people: [{ ...person, role: 'reader' }] }, who };
  await assert.rejects(enterRows(code, other, effects), coded('store/already-there'));
});

test('a reading with a calliper whose certificate ran out is refused, unless a reason is given, which the ledger keeps', async (t) => {
  const effects = await prepared(t);
  await enterRows(code, { rows: { pieces: [piece('A-1')] }, who }, effects);
  const rows = { gauging: [reading('A-1', 8.02)] };
  await assert.rejects(enterRows(code, { rows, who }, effects), coded('entry/certificate-not-in-force'));
  await enterRows(code, { rows, who, override: 'checked on a gauge block this morning' }, effects);
  const entry = (await ledgerEntries(effects.store, code)).at(-1);
  assert.match(entry?.why ?? '', /without a certificate in force for CAL-1: checked on a gauge block this morning/);
});

test('nothing is pulled before the plan is frozen; a product after it needs its reason', async (t) => {
  const effects = await prepared(t);
  await enterRows(code, { rows: { pieces: [piece('A-1')] }, who }, effects);
  const rows = { pulls: [pull('P-1', 'A-1')] };
  await assert.rejects(enterRows(code, { rows, who }, effects), coded('entry/plan-not-frozen'));
  await freezePlan(code, { who, why: 'agreed with the client' }, effects);
  await assert.rejects(freezePlan(code, { who, why: 'again' }, effects), coded('entry/frozen-already'));
  await enterRows(code, { rows, who }, effects);
  const birch = { ...product, product: 'BIRCH-8', supplier: 'Birch' };
  await assert.rejects(enterRows(code, { rows: { products: [birch] }, who }, effects), coded('entry/plan-frozen'));
  await enterRows(code, { rows: { products: [birch] }, who, why: 'the client asked for a second one' }, effects);
});

test('after the freeze a change of the brief is called an amendment; the step itself is not corrected by hand', async (t) => {
  const effects = await prepared(t);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const [held] = (await rowsHeld(code, 'campaign', page, effects)).rows;
  assert.ok(held);
  const body = { ...(held.body as ReturnType<typeof campaignRow>), pieces_per_product: 3 };
  const request = { kind: 'campaign', id: code, revision: held.revision, body, who, why: 'two are too few' } as const;
  await correctRow(code, request, effects);
  assert.equal((await ledgerEntries(effects.store, code)).at(-1)?.action, 'amend');
  const thawed = { ...request, revision: held.revision + 1, body: { ...body, plan_frozen_at: null } };
  await assert.rejects(correctRow(code, thawed, effects), coded('entry/step'));
});

test('a plan that lacks its pieces, its seed or its products is not frozen, and says what it lacks', async (t) => {
  const effects = await emptyRecord(t);
  await commission({ campaign: campaignRow(), who }, effects);
  await assert.rejects(freezePlan(code, { who, why: 'now' }, effects), /lacks a product, how many pieces .* seed/);
});

test('a correction whose answer was lost is answered as kept; another one from the same revision is told', async (t) => {
  const effects = await prepared(t);
  const body = { ...product, claimed_breaking_force_kN: 40 };
  const request = { kind: 'products', id: 'ASH-8', revision: 1, body, who, why: 'read off the tag' } as const;
  const first = await correctRow(code, request, effects);
  assert.deepEqual(await correctRow(code, request, effects), first);
  const other = { ...request, who: 'examiner', body: { ...product, claimed_breaking_force_kN: 41 } };
  await assert.rejects(correctRow(code, other, effects), coded('store/revision-conflict'));
});

test('a withdrawal whose answer was lost is answered as kept', async (t) => {
  const effects = await prepared(t);
  await enterRows(code, { rows: { pieces: [piece('A-1')] }, who }, effects);
  const request = { kind: 'pieces', id: 'A-1', revision: 1, who, why: 'cut too short' } as const;
  const first = await withdrawRow(code, request, effects);
  assert.deepEqual(await withdrawRow(code, request, effects), first);
  await assert.rejects(withdrawRow(code, { ...request, id: 'A-2' }, effects), coded('store/unknown-record'));
});

test('from the freezing of a blind plan to the unblinding, nothing shown names product, supplier, sample or price', async (t) => {
  const effects = await prepared(t, { blinding: 'blind' });
  await assert.rejects(
    enterRows(code, { rows: { pieces: [piece('ASH-8-1')] }, who }, effects),
    coded('entry/code-tells'),
  );
  await enterRows(code, { rows: { pieces: [piece('K7P')] }, who }, effects);
  assert.match(await shown(effects), /Ash/, 'before the freeze the claim is entered by name');
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const blind = await shown(effects);
  assert.doesNotMatch(blind, /ash/i);
  assert.doesNotMatch(blind, /6\.437/);
  assert.match(blind, /Product A/);
  assert.match(blind, /K7P/);
  await assert.rejects(
    enterRows(code, { rows: { products: [], samples: [sample, { ...sample, sample: 'S9' }] }, who }, effects),
    coded('entry/blind'),
  );
  await unblind(code, { who, why: 'all pulls are done' }, effects);
  assert.match(await shown(effects), /Ash/);
  await assert.rejects(unblind(code, { who, why: 'again' }, effects), coded('entry/not-blind'));
});

/** Everything the screens may read of the campaign, as one text. */
async function shown(effects: Parameters<typeof rowsHeld>[3] & Parameters<typeof judgeCampaign>[1]): Promise<string> {
  const kinds = ['products', 'samples', 'custody', 'pieces', 'photographs'] as const;
  const pages = await Promise.all(kinds.map((kind) => rowsHeld(code, kind, page, effects)));
  return JSON.stringify([pages, await judgeCampaign({ campaign: code }, effects)]);
}

test('a file is kept with the row that names it, byte for byte, and sending it twice changes nothing', async (t) => {
  const effects = await prepared(t);
  const bytes = new TextEncoder().encode('not a picture, but bytes');
  const { sha256 } = await holdFile(bytes, effects);
  const path = 'photographs/S1.png';
  const photograph = {
    file: path,
    piece: null,
    sample: 'ASH-8-S1',
    caption: 'as received',
    by: 'gauger',
    taken_at: null,
  };
  const request = { rows: { photographs: [photograph] }, files: [{ path, sha256 }], who };
  const first = await enterRows(code, request, effects);
  assert.deepEqual(await enterRows(code, request, effects), first);
  assert.deepEqual((await readFileOf(code, path, effects)).bytes, bytes);
  await assert.rejects(readFileOf(code, 'photographs/none.png', effects), coded('entry/file-unknown'));
});

test('the bench keeps its own people and kit in its own book, with its own ledger', async (t) => {
  const effects = await emptyRecord(t);
  await enterRows('_bench', { rows: { people: [person] }, who }, effects);
  const { rows } = await rowsHeld('_bench', 'people', page, effects);
  assert.deepEqual(
    rows.map(({ body }) => body),
    [person],
  );
  assert.equal((await verifyLedger(effects.store, '_bench')).ok, true);
});
