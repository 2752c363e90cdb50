import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { CutRequest } from '@provinghouse/contract';
import { isInputError } from '@provinghouse/core';
import type { Effects } from '../../src/effects.ts';
import { enterRows, freezePlan, rowsHeld, rowsOf, withdrawRow } from '../../src/entry/index.ts';
import { ledgerState } from '../../src/index.ts';
import { cutSample, labelsOf } from '../../src/samples/index.ts';
import { code, prepared, sample, who } from '../entry/desk.ts';

const page = { after: -1, limit: 100 };
const coded = (wanted: string) => (error: unknown) => isInputError(error) && error.code === wanted;

/** A lot that gives 0, 1, 2 ... in turn. */
function withDraw(effects: Effects) {
  let drawn = 0;
  return { ...effects, draw: (below: number) => drawn++ % below };
}

const cutting = (cells: Partial<CutRequest> = {}): CutRequest => ({
  sample: sample.sample,
  count: 3,
  links: 5,
  gaugedOver: 'zinc',
  note: null,
  piecesBefore: 0,
  who,
  ...cells,
});

test('a sample is cut into pieces that go on counting, also past a piece that was taken out', async (t) => {
  const effects = withDraw(await prepared(t));
  const first = await cutSample(code, cutting(), effects);
  assert.deepEqual(first.pieces, ['ASH-8-S1-1', 'ASH-8-S1-2', 'ASH-8-S1-3']);
  const [row] = (await rowsHeld(code, 'pieces', page, effects)).rows;
  assert.ok(row);
  assert.deepEqual(row.body, {
    piece: 'ASH-8-S1-1',
    sample: 'ASH-8-S1',
    links: 5,
    gauge_length_mm: null,
    gauged_over: 'zinc',
    note: null,
  });
  await withdrawRow(code, { kind: 'pieces', id: 'ASH-8-S1-3', revision: 1, who, why: 'the saw slipped' }, effects);
  const { pieces } = await cutSample(code, cutting({ count: 1, piecesBefore: 2 }), effects);
  assert.deepEqual(pieces, ['ASH-8-S1-4'], 'number 3 is on a tag somewhere');
});

test('the same cutting sent again, because no answer came, cuts nothing more and gives the same answer', async (t) => {
  const effects = withDraw(await prepared(t));
  const first = await cutSample(code, cutting(), effects);
  const length = (await ledgerState(code, effects))?.entries;
  assert.deepEqual(await cutSample(code, cutting(), effects), first);
  assert.equal((await ledgerState(code, effects))?.entries, length);
});

test('of two who cut the same sample at once, one is told that it was cut meanwhile', async (t) => {
  const effects = withDraw(await prepared(t));
  const told = await Promise.allSettled([
    cutSample(code, cutting(), effects),
    cutSample(code, cutting({ who: 'examiner', count: 2 }), effects),
  ]);
  assert.deepEqual(
    told.map(({ status }) => status),
    ['fulfilled', 'rejected'],
  );
  assert.equal((await rowsOf(effects.store, code, 'pieces')).length, 3);
  const late = cutSample(code, cutting({ who: 'examiner', count: 2 }), effects);
  await assert.rejects(late, coded('entry/cut-meanwhile'));
});

test('an unknown sample is not cut, and the cure is told', async (t) => {
  const effects = withDraw(await prepared(t));
  await assert.rejects(cutSample(code, cutting({ sample: 'S9' }), effects), coded('entry/sample-unknown'));
  await assert.rejects(cutSample('NONE', cutting(), effects), coded('campaign/unknown'));
});

test('in a blind campaign the codes are drawn, tell nothing, and a sample can be cut by its neutral name', async (t) => {
  const effects = withDraw(await prepared(t, { blinding: 'blind' }));
  const { pieces } = await cutSample(code, cutting(), effects);
  assert.equal(new Set(pieces).size, 3);
  for (const piece of pieces) assert.match(piece, /^[CDFHJKMNPRTWXY3479]{4}$/);
  await freezePlan(code, { who, why: 'agreed' }, effects);
  const [shown] = (await rowsHeld(code, 'samples', page, effects)).rows;
  assert.equal(shown?.id, 'Product A, sample 1');
  const further = await cutSample(code, cutting({ sample: 'Product A, sample 1', count: 1, piecesBefore: 3 }), effects);
  assert.match(further.pieces[0] ?? '', /^[CDFHJKMNPRTWXY3479]{4}$/);
  await assert.rejects(cutSample(code, cutting({ piecesBefore: 4 }), effects), coded('entry/sample-unknown'));
});

test('labels are printed for the pieces asked for, and a piece that is not there is named', async (t) => {
  const effects = withDraw(await prepared(t));
  const { pieces } = await cutSample(code, cutting(), effects);
  const asked = { pieces, sheet: 'a4-3x8', used: 0, withCuttingMarks: true, origin: 'http://bench:8480' } as const;
  const pdf = await labelsOf(code, asked, effects);
  assert.equal(new TextDecoder().decode(pdf.slice(0, 5)), '%PDF-');
  await assert.rejects(labelsOf(code, { ...asked, pieces: ['X'] }, effects), coded('entry/piece-unknown'));
});

test('a piece entered by hand under a code of its own stands beside those that are cut', async (t) => {
  const effects = withDraw(await prepared(t));
  const row = { piece: 'ASH-8-S1-9', sample: sample.sample, links: 5, gauge_length_mm: null };
  await enterRows(code, { rows: { pieces: [{ ...row, gauged_over: null, note: null }] }, who }, effects);
  const { pieces } = await cutSample(code, cutting({ count: 1, piecesBefore: 1 }), effects);
  assert.deepEqual(pieces, ['ASH-8-S1-10']);
});
