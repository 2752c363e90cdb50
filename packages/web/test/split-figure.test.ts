import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { splitFigureTable } from '../src/features/findings/split-figure.ts';

const bars = fc.array(
  fc.record({
    product: fc.string({ minLength: 1 }),
    size_pct: fc.double({ min: -60, max: 60, noNaN: true }),
    total_pct: fc.option(fc.double({ min: -60, max: 60, noNaN: true })),
  }),
  { minLength: 1, maxLength: 6 },
);

test('the step by size and the step by steel come to the two together', () => {
  fc.assert(
    fc.property(bars, (given) => {
      const { rows } = splitFigureTable(given);
      assert.equal(rows.length, given.length);
      for (const [at, [product, size, steel, together]] of rows.entries()) {
        assert.equal(product, given[at]?.product);
        assert.equal(together, given[at]?.total_pct);
        if (together === null) assert.equal(steel, null);
        else assert.ok(Math.abs(Number(size) + Number(steel) - Number(together)) < 1e-9);
      }
    }),
    { seed: 7, numRuns: 200 },
  );
});
