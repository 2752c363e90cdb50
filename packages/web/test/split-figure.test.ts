import assert from 'node:assert/strict';
import { test } from 'node:test';
import { inkOf } from '@provinghouse/figure';
import fc from 'fast-check';
import { parseHTML } from 'linkedom';
import { splitFigure, splitFigureTable } from '../src/features/findings/split-figure.ts';

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

for (const theme of ['paper', 'screen-light', 'screen-dark'] as const)
  test(`the ${theme} figure has the inks, the lines and the face of the other figures`, () => {
    const { document } = parseHTML('<html></html>');
    const ink = inkOf({ theme });
    const drawn = splitFigure([{ product: 'ASH-8', size_pct: 3, total_pct: -2 }], { document, width: 600, theme });
    assert.equal(drawn.getAttribute('font-family'), ink.family);
    const inks = new Set<unknown>(Object.values(ink));
    const lines = [0.5 * ink.line, ink.line].map((line) => String(Number(line.toFixed(2))));
    for (const part of drawn.querySelectorAll('*')) {
      for (const name of ['fill', 'stroke']) {
        const paint = part.getAttribute(name);
        assert.ok(paint === null || inks.has(paint), `${name} ${paint}`);
      }
      const width = part.getAttribute('stroke-width');
      assert.ok(width === null || lines.includes(width), `a line of ${width}`);
    }
  });
