import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bracketedRoot } from '../../../src/statistics/comparison/bracketed-root.ts';
import { rangeFamily } from '../../../src/statistics/comparison/range-family.ts';
import { studentizedRangeQuantile, studentizedRangeUpper } from '../../../src/statistics/distribution/index.ts';

for (const groups of [2, 3, 7, 13]) {
  test(`laid down once for ${groups} groups, the studentized range keeps its digits in every tail`, () => {
    const family = rangeFamily(groups);
    for (const nu of [1, 1.7, 4.4, 30]) {
      for (const q of [0.05, 1, 3.3, 9, 50]) {
        const whole = studentizedRangeUpper(q, groups, nu);
        assert.ok(Math.abs(family.upper(q, nu) / whole - 1) < 1e-9, `q ${q}, nu ${nu}`);
      }
      const exact = studentizedRangeQuantile(0.95, groups, nu);
      assert.ok(Math.abs(family.quantile(0.95, nu) / exact - 1) < 1e-9, `quantile, nu ${nu}`);
    }
  });
}

test('a root is found to the last digits, and none is made up', () => {
  const root = bracketedRoot((x) => x ** 3 - 2, { lower: 0, upper: 4, tolerance: 1e-15 });
  assert.ok(Math.abs((root ?? 0) - Math.cbrt(2)) < 1e-14);
  assert.equal(
    bracketedRoot((x) => x * x + 1, { lower: -1, upper: 1 }),
    null,
  );
  assert.equal(
    bracketedRoot((x) => x, { lower: 0, upper: 1 }),
    0,
  );
});
