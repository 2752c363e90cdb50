import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import fc from 'fast-check';
import { meanForce } from '../src/breaking-force-dots.ts';
import { breakingForceDots, breakingForceDotsTable, type DotUse, type ProductDots } from '../src/index.ts';
import { demoDots } from './demo.ts';
import { formsOf, settingOf, wordsOf } from './paper.ts';

const arrow = 'M#,#L#,#M#,#L#,#L#,#';

function productOf(uses: readonly DotUse[]): ProductDots {
  const pieces = uses.map((use, index) => ({
    piece: `A-${index}`,
    force_kN: 40 + index,
    use,
    expandedUncertainty_kN: 0.4,
  }));
  return { product: 'A', pieces, minimum_kN: 39, acceptedFrom_kN: 39.5, tolerance: null };
}

const drawn = (product: ProductDots) => breakingForceDots({ products: [product] }, settingOf());

describe('the dots of a product', () => {
  test('draw an "at least" value as an arrow and keep it out of the mean', () => {
    const product = productOf(['value', 'value', 'at least']);
    assert.equal(meanForce(product), 40.5);
    const arrows = formsOf(drawn(product)).filter((form) => form === arrow).length;
    const without = formsOf(drawn(productOf(['value', 'value', 'value']))).filter((form) => form === arrow).length;
    // One at the piece and one in the key.
    assert.equal(arrows - without, 2);
  });

  test('draw a pull left out hollow and keep it out of the mean', () => {
    const product = productOf(['value', 'left out']);
    assert.equal(meanForce(product), 40);
    const hollow = [...drawn(product).querySelectorAll('[fill="#ffffff"]')];
    assert.equal(hollow.length, 2);
    assert.ok(wordsOf(drawn(product)).includes('left out'));
  });

  test('have no mean when every value is only "at least"', () => {
    const product = productOf(['at least', 'at least']);
    assert.equal(meanForce(product), null);
    assert.ok(!wordsOf(drawn(product)).includes('mean of the values'));
  });

  test('draw the guard band only where there is one', () => {
    const product = productOf(['value']);
    assert.ok(wordsOf(drawn(product)).includes('guard band: inconclusive'));
    assert.ok(!wordsOf(drawn({ ...product, acceptedFrom_kN: 39 })).includes('guard band: inconclusive'));
    assert.ok(!wordsOf(drawn({ ...product, acceptedFrom_kN: null })).includes('guard band: inconclusive'));
  });

  test('are not squeezed by a tolerance bound far below them: it is an arrow at the edge, its number beside the row', () => {
    const tolerance = { bound: -120, coverage: 0.95, confidence: 0.95 };
    const product = { ...productOf(['value', 'value']), tolerance };
    assert.ok(wordsOf(drawn(product)).some((words) => words.includes('bound −120')));
    const ticks = wordsOf(drawn(product)).map(Number).filter(Number.isFinite);
    assert.ok(Math.min(...ticks) > 30);
  });

  test('have no number that is none, whatever the forces', () => {
    const piece = fc.record({
      piece: fc.string(),
      force_kN: fc.double({ min: 0, max: 2000, noNaN: true }),
      use: fc.constantFrom<DotUse>('value', 'at least', 'left out'),
      expandedUncertainty_kN: fc.option(fc.double({ min: 0, max: 50, noNaN: true })),
    });
    const product = fc.record({
      product: fc.string(),
      pieces: fc.array(piece, { maxLength: 6 }),
      minimum_kN: fc.option(fc.double({ min: 0, max: 2000, noNaN: true })),
      acceptedFrom_kN: fc.option(fc.double({ min: 0, max: 2000, noNaN: true })),
      tolerance: fc.constant(null),
    });
    fc.assert(
      fc.property(fc.array(product, { maxLength: 4 }), (products) => {
        const svg = breakingForceDots({ products }, settingOf());
        for (const part of svg.querySelectorAll('path, rect, line, circle'))
          for (const name of part.getAttributeNames())
            assert.doesNotMatch(part.getAttribute(name) ?? '', /NaN|Infinity|undefined/);
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  test('stand in the table one a row, used or not', () => {
    const data = demoDots();
    const table = breakingForceDotsTable(data);
    assert.equal(table.rows.length, data.products.flatMap((product) => product.pieces).length);
    assert.ok(table.rows.every((row) => row.length === table.columns.length));
    assert.ok(table.rows.some((row) => row.includes('at least')) && table.rows.some((row) => row.includes('left out')));
  });
});
