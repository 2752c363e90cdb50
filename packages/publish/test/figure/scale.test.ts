import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import fc from 'fast-check';
import { position, scaleOver } from '../../src/figure/scale.ts';

const extent = { start: 10, end: 110, ticks: 5 };

describe('a scale', () => {
  test('holds every value between its ends, with 2 to 12 ticks told apart by their decimals', () => {
    const values = fc.array(fc.double({ min: -1e5, max: 1e5, noNaN: true, noDefaultInfinity: true }), {
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(values, (list) => {
        const scale = scaleOver(list, extent);
        // Positions are compared to a millionth of a point: the division by the step rounds.
        for (const value of list)
          assert.ok(position(scale, value) >= 10 - 1e-6 && position(scale, value) <= 110 + 1e-6);
        assert.ok(scale.ticks.length >= 2 && scale.ticks.length <= 12);
        if (scale.places <= 100) {
          assert.equal(new Set(scale.ticks.map((tick) => tick.toFixed(scale.places))).size, scale.ticks.length);
        }
      }),
      { seed: 7, numRuns: 1000 },
    );
  });

  test('of nothing, or of values that are no numbers, runs from 0 to 1', () => {
    assert.deepEqual([scaleOver([], extent).from, scaleOver([Number.NaN], extent).to], [0, 1]);
  });

  test('of one value has a width', () => {
    const scale = scaleOver([40.2], extent);
    assert.ok(scale.from <= 40.2 && scale.to >= 40.2 && scale.to > scale.from);
  });
});
