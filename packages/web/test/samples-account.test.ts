import assert from 'node:assert/strict';
import { test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import fc from 'fast-check';
import { alertsOf, cutLength_m, lastMove } from '../src/lib/samples/account.ts';
import { expectationOf, massDeviation_pct, massPerMetre } from '../src/lib/samples/against-claim.ts';

const sample = rowWith('samples', { sample: 'ASH-8-S1', product: 'ASH-8', received_on: '2026-03-05', length_m: 1 });
const move = (number: number, due_back_on: string | null = null) =>
  rowWith('custody', {
    sample: 'ASH-8-S1',
    move: number,
    moved_at: '2026-03-05T14:00Z',
    place: 'shelf 2',
    due_back_on,
  });
const piece = (links: number, gauge_length_mm: number | null = null) =>
  rowWith('pieces', { piece: `P${links}`, sample: 'ASH-8-S1', links, gauge_length_mm });
const facts = { sample, moves: [move(1)], pieces: [], pitch_mm: 24, today: '2026-03-20' };

test('a sample in its place, of which no more was cut than received, is not looked at', () => {
  assert.deepEqual(alertsOf({ ...facts, pieces: [piece(20), piece(20)] }), []);
});

test('a sample without a move is not accounted for', () => {
  assert.deepEqual(alertsOf({ ...facts, moves: [] }), [{ kind: 'noMove' }]);
});

test('a sample is overdue from the day after it was to be back, until a later move', () => {
  const lent = [move(1), move(2, '2026-03-10')];
  assert.deepEqual(alertsOf({ ...facts, moves: lent, today: '2026-03-10' }), []);
  assert.deepEqual(alertsOf({ ...facts, moves: lent }), [{ kind: 'overdue', days: 10, due: '2026-03-10' }]);
  assert.deepEqual(alertsOf({ ...facts, moves: [...lent, move(3)] }), []);
});

test('pieces that are longer than what was received are not accounted for; without a pitch only gauge lengths tell', () => {
  const pieces = [piece(30), piece(20)];
  assert.deepEqual(alertsOf({ ...facts, pieces }), [{ kind: 'tooLong', cut_m: 1.2, received_m: 1 }]);
  assert.deepEqual(alertsOf({ ...facts, pieces, pitch_mm: null }), []);
  assert.equal(cutLength_m([piece(5, 120), piece(5, 121)], null), 0.241);
  assert.equal(cutLength_m([], 24), null);
});

test('the last move is the one with the greatest number, in whatever order they are read', () => {
  const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { minLength: 1 });
  fc.assert(
    fc.property(numbers, (all) => assert.equal(lastMove(all.map((one) => move(one)))?.move, Math.max(...all))),
    { seed: 7, numRuns: 100 },
  );
  assert.equal(lastMove([]), null);
});

test('mass per metre is absent without length or mass, and is set against the nominal one, else against the shape', () => {
  assert.equal(massPerMetre(2, 2.8), 1.4);
  assert.equal(massPerMetre(null, 2.8), null);
  assert.equal(massPerMetre(2, null), null);
  const claim = { product: 'ASH-8', supplier: 'Ash', nominal_size_mm: 8, specification: 'en-818-3', grade: '4' };
  const expected = expectationOf(rowWith('products', claim), []);
  assert.equal(expected.massPerMetre, null, 'EN 818-3 gives no mass');
  const shape = expected.massByShape_kg_per_m ?? Number.NaN;
  assert.ok(Math.abs((massDeviation_pct(shape * 1.02, expected) ?? 0) - 2) < 1e-9);
  const nothing = expectationOf(undefined, []);
  assert.deepEqual(nothing, { massPerMetre: null, massByShape_kg_per_m: null, pitch_mm: null });
  assert.equal(massDeviation_pct(1.4, nothing), null);
});
