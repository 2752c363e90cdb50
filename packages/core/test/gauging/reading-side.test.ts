import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { readingSide } from '../../src/gauging/index.ts';
import { everyProduct } from './product-limits.ts';

const products = everyProduct;

test('a reading on either side of a limit is told apart, and one on the limit is inside', () => {
  for (const { limits } of products)
    for (const limit of limits) {
      if (limit.quantity !== 'pitch') continue;
      const side = (value_mm: number) =>
        readingSide({ quantity: 'pitch', overLinks: null, value_mm }, { limits, zincOnBar_mm: null })?.side;
      if (limit.lower !== null) assert.deepEqual([side(limit.lower), side(limit.lower * 0.999)], ['inside', 'below']);
      if (limit.upper !== null) assert.deepEqual([side(limit.upper), side(limit.upper * 1.001)], ['inside', 'above']);
    }
});

test('zinc comes off a bar before it is held against its limit, and never off a pitch', () => {
  fc.assert(
    fc.property(fc.constantFrom(...products), fc.double({ min: 0, max: 0.5, noNaN: true }), (product, zinc_mm) => {
      const { limits } = product;
      const bar = limits.find(({ quantity, upper }) => quantity === 'diameter' && upper !== null);
      if (bar?.upper == null) return;
      const reading = { quantity: 'diameter', overLinks: null, value_mm: bar.upper + zinc_mm } as const;
      const found = readingSide(reading, { limits, zincOnBar_mm: zinc_mm });
      assert.equal(found?.side, 'inside');
      const pitch = { quantity: 'pitch', overLinks: null, value_mm: 24 } as const;
      assert.deepEqual(
        readingSide(pitch, { limits, zincOnBar_mm: zinc_mm }),
        readingSide(pitch, { limits, zincOnBar_mm: 0 }),
      );
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('a bar above its limit over zinc of unknown thickness is left open, one below it is not', () => {
  for (const { limits } of products) {
    const bar = limits.find(({ quantity }) => quantity === 'diameter');
    if (bar?.lower == null || bar.upper === null) continue;
    const side = (value_mm: number) =>
      readingSide({ quantity: 'diameter', overLinks: null, value_mm }, { limits, zincOnBar_mm: null })?.side;
    assert.equal(side(bar.upper * 1.01), 'above, zinc on it');
    assert.equal(side(bar.lower * 0.99), 'below');
  }
});

test('where nothing limits a quantity there is no side', () => {
  const reading = { quantity: 'outerLength', overLinks: null, value_mm: 40 } as const;
  assert.equal(readingSide(reading, { limits: [], zincOnBar_mm: 0 }), null);
});
