import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  nearestR10,
  preferredNumbers,
  roundDownR40,
  roundUpR20,
  rulebook,
  toPrecision3,
} from '../../src/chain/index.ts';

const positive = fc.double({ min: 1e-6, max: 1e9, noNaN: true });

test('the series are those of the rulebook file (ISO 3, memory)', () => {
  for (const series of ['R10', 'R20', 'R40'] as const) {
    assert.deepEqual(preferredNumbers[series], rulebook.general.preferredNumbers[series]);
  }
});

test('rounding down never rises above the value, and the next R40 step would', () => {
  fc.assert(
    fc.property(positive, (value) => {
      const rounded = roundDownR40(value);
      assert.ok(rounded <= value * (1 + 1e-8));
      // Neighbouring R40 members differ by at most 7.5 %.
      assert.ok(rounded * 1.075 > value);
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('rounding up never falls below the value, and rounding a member again changes nothing', () => {
  fc.assert(
    fc.property(positive, (value) => {
      const rounded = roundUpR20(value);
      assert.ok(rounded >= value * (1 - 1e-8));
      assert.equal(roundUpR20(rounded), rounded);
      assert.equal(roundDownR40(rounded), rounded, 'R20 is every second member of R40');
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('ten times the value rounds to ten times the member', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 1e5, noNaN: true }), (value) => {
      const once = nearestR10(value);
      assert.ok(Math.abs(nearestR10(value * 10) / (once * 10) - 1) < 0.3);
      assert.ok(Math.abs(once - value) <= 0.15 * value, 'the nearest R10 number lies within half the widest step');
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('nothing that is not a finite number above zero has a preferred number', () => {
  for (const value of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
    assert.ok(Number.isNaN(roundDownR40(value)));
    assert.ok(Number.isNaN(roundUpR20(value)));
    assert.ok(Number.isNaN(nearestR10(value)));
  }
});

test('three significant figures', () => {
  assert.equal(toPrecision3(636.17), 636);
  assert.equal(toPrecision3(40.2124), 40.2);
});
