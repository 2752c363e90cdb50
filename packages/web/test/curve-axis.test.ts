import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { axesOf, extentOf, nearestIndex, placeOf } from '../src/components/trace/curve-axis.ts';

const curve = {
  pull: 'P',
  time_s: [0, 1, 2, 3],
  force_kN: [0, 5, 4, 9],
  table_mm: [0, 2, null, 3],
  extension_mm: null,
};

test('a curve is drawn only against signals it has', () => {
  assert.deepEqual(axesOf(curve), ['table', 'time']);
});

test('an instant lies at the sample nearest in time; in a hole of the signal it lies nowhere', () => {
  assert.equal(placeOf(curve, 'table', 0.6), 2);
  assert.equal(placeOf(curve, 'table', 2.1), null);
  assert.equal(placeOf(curve, 'extension', 1), null);
  assert.equal(placeOf({ ...curve, time_s: null }, 'table', 1), null);
});

test('no sample is nearer than the one found', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1 }),
      fc.double({ min: -5, max: 105, noNaN: true }),
      (values, wanted) => {
        const rising = values.toSorted((a, b) => a - b);
        const found = Math.abs((rising[nearestIndex(rising, wanted)] ?? Number.NaN) - wanted);
        assert.equal(found, Math.min(...rising.map((value) => Math.abs(value - wanted))));
      },
    ),
    { seed: 7, numRuns: 300 },
  );
});

test('a flat signal still has a width, an empty one a place', () => {
  assert.deepEqual(extentOf([3, null, 3], 0.1), { min: 2.9, max: 3.1 });
  assert.deepEqual(extentOf([null], 0.1), { min: 0, max: 1 });
});
