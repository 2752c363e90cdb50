import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import { enterRows, freezePlan, unblind } from '../../src/entry/index.ts';
import { plannedPulls } from '../../src/trace-entry/index.ts';
import { code, piece, prepared, product, sample, who } from '../entry/desk.ts';

const birch = { ...product, product: 'BIRCH-8', supplier: 'Birch' };
const ofBirch = { ...sample, sample: 'BIRCH-8-S1', product: 'BIRCH-8' };
const codes = ['KX1', 'KX2', 'KX3', 'KX4', 'KX5', 'KX6'];
const pieces = codes.map((name, at) => ({ ...piece(name), sample: at % 2 === 0 ? 'ASH-8-S1' : 'BIRCH-8-S1' }));

test('every piece has one place, and each block a piece of every product', async (t) => {
  const effects = await prepared(t);
  await enterRows(code, { rows: { products: [birch], samples: [ofBirch], pieces }, who }, effects);
  const { order, seed } = await plannedPulls(code, effects);
  assert.equal(seed, 7);
  assert.deepEqual(order.map((one) => one.piece).sort(), codes);
  assert.deepEqual(
    order.map(({ position }) => position),
    [1, 2, 3, 4, 5, 6],
  );
  for (const block of [1, 2, 3]) {
    const own = order.filter((one) => one.block === block).map((one) => codes.indexOf(one.piece) % 2);
    assert.deepEqual(own.sort(), [0, 1]);
  }
});

test('the order of a blind campaign is the same before, while and after nobody is named', async (t) => {
  const effects = await prepared(t, { blinding: 'blind' });
  await enterRows(code, { rows: { products: [birch], samples: [ofBirch], pieces }, who }, effects);
  const before = (await plannedPulls(code, effects)).order;
  await freezePlan(code, { who, why: 'planned' }, effects);
  const blind = await plannedPulls(code, effects);
  assert.doesNotMatch(JSON.stringify(blind), /ash|birch/i);
  await unblind(code, { who, why: 'all pulled' }, effects);
  const after = (await plannedPulls(code, effects)).order;
  assert.deepEqual(blind.order, before);
  assert.deepEqual(after, before);
});

test('a plan without a seed has no order', async (t) => {
  const effects = await prepared(t, { order_seed: null });
  await enterRows(code, { rows: { pieces: [piece('A-1')] }, who }, effects);
  assert.deepEqual(await plannedPulls(code, effects), { order: [], seed: null, sentence: null });
});

test('an unknown campaign has none', async (t) => {
  const effects = await prepared(t);
  await assert.rejects(
    plannedPulls('NONE', effects),
    (error) => isInputError(error) && error.code === 'campaign/unknown',
  );
});
