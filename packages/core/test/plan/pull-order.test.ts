import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { pullOrder } from '../../src/plan/index.ts';

const campaign = (products: number, each: number) =>
  Array.from({ length: products }, (_, product) =>
    Array.from({ length: each }, (_, piece) => ({ piece: `P-${product}-${piece}`, product: `product ${product}` })),
  ).flat();

test('each piece is pulled once, products are spread evenly over blocks, blocks differ by one piece at most', () => {
  const plans = fc.record({
    products: fc.integer({ min: 1, max: 14 }),
    each: fc.integer({ min: 1, max: 9 }),
    blocks: fc.integer({ min: 1, max: 6 }),
    seed: fc.integer(),
  });
  fc.assert(
    fc.property(plans, ({ products, each, blocks, seed }) => {
      const pieces = campaign(products, each);
      const { order } = pullOrder({ pieces, blocks, seed });
      assert.deepEqual(order.map(({ piece }) => piece).toSorted(), pieces.map(({ piece }) => piece).toSorted());
      assert.deepEqual(
        order.map(({ position }) => position),
        pieces.map((_, index) => index + 1),
      );
      assert.ok(order.every(({ block }, index) => block >= (order[index - 1]?.block ?? 1)));
      const spread = (counts: readonly number[]) => Math.max(...counts) - Math.min(...counts);
      const inBlock = (block: number) => order.filter((one) => one.block === block);
      const numbers = Array.from({ length: blocks }, (_, index) => index + 1);
      assert.ok(spread(numbers.map((block) => inBlock(block).length)) <= 1);
      for (const product of new Set(pieces.map((one) => one.product))) {
        const counts = numbers.map((block) => inBlock(block).filter((one) => one.product === product).length);
        assert.ok(spread(counts) <= 1);
      }
    }),
    { seed: 7, numRuns: 150 },
  );
});

test('the same seed and pieces give the same order however the pieces are listed; another seed another', () => {
  const pieces = campaign(5, 5);
  const first = pullOrder({ pieces, blocks: 2, seed: 42 });
  assert.deepEqual(pullOrder({ pieces: pieces.toReversed(), blocks: 2, seed: 42 }), first);
  assert.notDeepEqual(pullOrder({ pieces, blocks: 2, seed: 43 }).order, first.order);
  assert.match(first.sentence, /seed 42/);
});

test('every piece comes first about as often as any other', () => {
  const pieces = campaign(4, 3);
  const counts = new Map(pieces.map(({ piece }) => [piece, 0]));
  const draws = 6000;
  for (let seed = 0; seed < draws; seed++) {
    const first = pullOrder({ pieces, blocks: 3, seed }).order[0]?.piece ?? '';
    counts.set(first, (counts.get(first) ?? 0) + 1);
  }
  const expected = draws / pieces.length;
  const chiSquared = [...counts.values()].reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  // 11 degrees of freedom: mean 11, standard deviation 4.7; six of them above.
  assert.ok(chiSquared < 39, `${chiSquared}`);
});

test('too few pieces for the blocks is said; nothing to pull is an empty order', () => {
  assert.match(
    pullOrder({ pieces: campaign(2, 1), blocks: 3, seed: 1 }).doubts.join(),
    /not in every block: product 0, product 1/,
  );
  assert.deepEqual(pullOrder({ pieces: [], blocks: 2, seed: 1 }).order, []);
});

test('no blocks and a piece named twice are refused', () => {
  assert.throws(() => pullOrder({ pieces: campaign(1, 2), blocks: 0, seed: 1 }), RangeError);
  assert.throws(() => pullOrder({ pieces: [...campaign(1, 1), ...campaign(1, 1)], blocks: 1, seed: 1 }), RangeError);
});
