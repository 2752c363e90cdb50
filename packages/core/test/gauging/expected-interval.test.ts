import assert from 'node:assert/strict';
import { test } from 'node:test';
import { everyProduct, interval, quantitiesOfLink } from './product-limits.ts';

test('for every product and quantity the interval runs upwards and holds what is expected most', () => {
  for (const product of everyProduct) {
    for (const quantity of quantitiesOfLink) {
      const { lower_mm, upper_mm, expected_mm } = interval(product, quantity);
      const words = `${product.title} ${quantity}: ${lower_mm} ${expected_mm} ${upper_mm}`;
      assert.ok(lower_mm > 0 && lower_mm < upper_mm, words);
      assert.ok(expected_mm >= lower_mm && expected_mm <= upper_mm, words);
    }
  }
});

test('a limit of the specification is a side of the interval, unchanged', () => {
  for (const product of everyProduct) {
    for (const quantity of quantitiesOfLink) {
      const limit = product.limits.find((found) => found.quantity === quantity);
      if (limit === undefined) continue;
      const found = interval(product, quantity);
      if (limit.lower !== null) assert.equal(found.lower_mm, limit.lower);
      if (limit.upper !== null) assert.equal(found.upper_mm, limit.upper);
      assert.equal(found.basis, 'limits');
    }
  }
});

test('a link is expected at least as wide outside as the narrowest inside and two of the thinnest bars', () => {
  for (const product of everyProduct) {
    const sides = (quantity: string) => product.limits.find((limit) => limit.quantity === quantity);
    const inner = sides('innerWidth')?.lower ?? null;
    const bar = sides('diameter')?.lower ?? null;
    if (inner === null || bar === null || (sides('outerWidth')?.lower ?? null) !== null) continue;
    assert.ok(Math.abs(interval(product, 'outerWidth').lower_mm - inner - 2 * bar) < 1e-9, product.title);
  }
});

test('the length over n links is n pitches, unless the specification limits it over n', () => {
  for (const product of everyProduct) {
    const pitch = interval(product, 'pitch');
    const length = interval(product, 'lengthOverLinks', 7);
    assert.ok(Math.abs(length.expected_mm - 7 * pitch.expected_mm) < 1e-6, product.title);
    const limit = product.limits.find(({ quantity }) => quantity === 'lengthOverLinks');
    if (limit?.lower != null) assert.equal(interval(product, 'lengthOverLinks', limit.links).lower_mm, limit.lower);
  }
});
