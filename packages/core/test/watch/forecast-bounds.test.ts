import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { boundsBy, type DistanceTable, distanceOf, riseBounds } from '../../src/watch/forecast-bounds.ts';
import { quantileBy, quantilesBy } from '../../src/watch/forecast-quantiles.ts';
import type { ForecastAxis } from '../../src/watch/forecast-tables.ts';

const quantiles = fc
  .tuple(
    fc.double({ min: 0, max: 0.5, noNaN: true }),
    fc.double({ min: 0, max: 0.5, noNaN: true }),
    fc.double({ min: 0, max: 0.5, noNaN: true }),
  )
  .map((three) => {
    const [low = 0, middle = 0, high = 0] = three.sort((a, b) => a - b);
    return { low, middle, high };
  });

const axes = fc.constantFrom('table', 'time') as fc.Arbitrary<ForecastAxis>;

test('the lower bound is never below nothing and never above the upper one', () => {
  const property = fc.property(axes, quantiles, (axis, seen) => {
    const { lower, upper } = riseBounds(axis, seen);
    assert.ok(0 <= lower && lower <= upper && upper <= 0.7, `${lower} to ${upper}`);
  });
  fc.assert(property, { seed: 7, numRuns: 500 });
});

test('every rise of the table at which what is seen is usual lies within the bounds', () => {
  const table: DistanceTable = {
    rises: [0, 0.05, 0.1, 0.2, 0.4],
    lowest: [-1.5, -1.2, -0.8, -0.5, 0],
    highest: [0.1, 0.4, 0.9, 1, 1.1],
  };
  const property = fc.property(quantiles, (seen) => {
    const { lower, upper } = boundsBy(table, seen);
    table.rises.forEach((rise, at) => {
      const distance = distanceOf(rise, seen);
      const isUsual = distance >= (table.lowest[at] ?? 0) && distance <= (table.highest[at] ?? 0);
      if (isUsual) assert.ok(lower <= rise + 1e-12 && rise <= upper + 1e-12, `${rise}, not in ${lower} to ${upper}`);
    });
  });
  fc.assert(property, { seed: 7, numRuns: 500 });
});

test('the distance of the middle is 0, that of the outer quantiles 1, and it grows with the rise', () => {
  const seen = { low: 0.05, middle: 0.1, high: 0.2 };
  assert.equal(distanceOf(0.1, seen), 0);
  assert.equal(distanceOf(0.05, seen), -1);
  assert.equal(distanceOf(0.2, seen), 1);
  const property = fc.property(fc.double({ min: 0, max: 0.6, noNaN: true }), quantiles, (rise, any) => {
    assert.ok(distanceOf(rise + 0.01, any) > distanceOf(rise, any));
  });
  fc.assert(property, { seed: 7, numRuns: 200 });
});

test('a tree leads a feature at its limit to the left, and a model adds up its trees', () => {
  const tree = { features: [1, 0, 0], limits: [5, 1, 2], leaves: [10, 20, 30, 40] };
  const by = (first: number, second: number): number => quantileBy({ start: 1, trees: [tree, tree] }, [first, second]);
  assert.deepEqual([by(1, 5), by(1.1, 5), by(2, 5.1), by(2.1, 6)], [21, 41, 61, 81]);
});

test('quantiles that cross are put in order, and none is below nothing', () => {
  const constant = (start: number) => ({ start, trees: [] });
  assert.deepEqual(quantilesBy([constant(0.3), constant(0.1), constant(0.2)], []), {
    low: 0.3,
    middle: 0.3,
    high: 0.3,
  });
  assert.deepEqual(quantilesBy([constant(-0.1), constant(-0.2), constant(0.2)], []), { low: 0, middle: 0, high: 0.2 });
});
