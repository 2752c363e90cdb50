import assert from 'node:assert/strict';
import { before, test } from 'node:test';
import type { CampaignFinding, DifferenceBrief, ProductFinding, ProductPlan } from '@provinghouse/contract';
import { powerToShowConformity } from '@provinghouse/core';
import fc from 'fast-check';
import { sizesOf } from '../../src/brief/difference.ts';
import { likeNeighbours, orderOf } from '../../src/brief/order.ts';
import { briefOf } from '../../src/index.ts';
import { demoFinding, withPieces } from './fixture.ts';

let finding: CampaignFinding;

before(async () => {
  finding = await demoFinding();
});

const counts = [2, 3, 4, 5, 7, 10, 20, 50];

function falls(values: readonly (number | null)[], what: string): void {
  for (const [index, value] of values.entries()) {
    const before = values[index - 1];
    if (before == null) continue;
    assert.ok(value !== null && value <= before + 1e-9 * Math.abs(before), `${what}: ${value} after ${before}`);
  }
}

function productOf(name: string): ProductFinding {
  const found = finding.products.find((one) => one.product === name);
  assert.ok(found);
  return found;
}

test('more pieces never need a bigger difference to tell products apart', () => {
  const pair = [productOf('ASH-8'), productOf('BIRCH-8')];
  const plans = counts.map((count) => sizesOf(pair.map((one) => withPieces(one, count)))[0]?.differences ?? []);
  for (const basis of ['assumed', 'found'] as const) {
    const of = (number: (plan: DifferenceBrief) => number | null) =>
      plans.map((differences) => {
        const plan = differences.find((one) => one.basis === basis);
        assert.ok(plan);
        return number(plan);
      });
    falls(
      of((plan) => plan.difference80_pct.value),
      `${basis}, 80 %`,
    );
    falls(
      of((plan) => plan.difference90_pct.value),
      `${basis}, 90 %`,
    );
    assert.equal(new Set(of((plan) => plan.piecesFor90.value)).size, 1);
  }
});

test('the difference that the needed pieces tell is not above the one asked, with a piece less it is', () => {
  const pair = [productOf('ASH-8'), productOf('BIRCH-8')];
  const needed = sizesOf(pair)[0]?.differences[0]?.piecesFor90.value ?? 0;
  const told = (count: number) =>
    sizesOf(pair.map((one) => withPieces(one, count)))[0]?.differences[0]?.difference90_pct.value ?? Number.NaN;
  assert.ok(told(needed) <= 5);
  assert.ok(told(needed - 1) > 5);
});

test('more pieces never need a stronger product, and never make it less likely to be shown', () => {
  const plans = counts.map((count): ProductPlan => {
    const products = finding.products.slice(0, 1).map((one) => withPieces(one, count));
    const plan = briefOf({ ...finding, products }).products[0]?.plans[0];
    assert.ok(plan);
    return plan;
  });
  for (const what of ['mean', 'share'] as const) {
    const needed = plans.map((plan) => plan[what].neededMean_kN.value);
    falls(needed.slice(needed.findIndex((mean) => mean !== null)), `${what}, mean needed`);
    falls(
      plans.map((plan) => -(plan[what].chance.value ?? 0)),
      `${what}, chance`,
    );
  }
  falls(
    plans.map((plan) => plan.allPass.value),
    'all pass',
  );
});

test('the mean needed is shown with a chance of 90 %', () => {
  const plans = briefOf(finding).products.flatMap((product) => product.plans);
  for (const { mean, share } of plans) {
    for (const [of, { value, inputs }] of [
      ['mean', mean.neededMean_kN],
      [{ share: 0.95 }, share.neededMean_kN],
    ] as const) {
      assert.ok(value !== null);
      const given = (name: string) => inputs.find((input) => input.name === name)?.value ?? Number.NaN;
      const question = {
        expectedMean: value,
        cov_pct: given('scatter'),
        limit: given('minimum'),
        side: 'lower',
      } as const;
      const power = powerToShowConformity(given('pieces'), {
        ...question,
        confidence: given('confidence'),
        guard: given('guard band'),
        of,
      });
      assert.ok(Math.abs((power ?? 0) - 0.9) < 1e-6, String(power));
    }
  }
});

test('a rig whose range ends below the expected force times the margin is refused, and no other for that', () => {
  fc.assert(
    fc.property(fc.double({ min: 20, max: 200, noNaN: true }), (end) => {
      const instruments = finding.instruments.map((one) =>
        one.kind === 'rig' ? { ...one, range_minimum: 1, range_maximum: end } : one,
      );
      for (const { checks } of briefOf({ ...finding, instruments, products: finding.products.slice(0, 1) }).rigs) {
        assert.ok(checks.length > 0);
        for (const { greatest_kN, margin, check } of checks)
          assert.equal(check.isSuited, greatest_kN * margin <= end, check.sentence);
      }
    }),
    { seed: 7, numRuns: 40 },
  );
});

test('a rig told in another unit than kN is never called suited', () => {
  const instruments = finding.instruments.map((one) => ({ ...one, unit: 'kg' }));
  for (const { checks } of briefOf({ ...finding, instruments, products: finding.products.slice(0, 1) }).rigs)
    for (const { check } of checks) assert.equal(check.isSuited, null);
});

test('every piece appears once in the order drawn, and the order does not hang on how the pieces are listed', () => {
  const order = orderOf(finding)?.drawn;
  const names = order?.order.map(({ piece }) => piece) ?? [];
  assert.deepEqual(names.toSorted(), finding.pieces.map(({ piece }) => piece).toSorted());
  assert.deepEqual(orderOf({ ...finding, pieces: finding.pieces.toReversed() })?.drawn, order);
});

test('every block of the demo holds a piece of every product', () => {
  const order = orderOf(finding)?.drawn.order ?? [];
  const blocks = Map.groupBy(order, ({ block }) => block);
  assert.equal(blocks.size, 5);
  for (const pulls of blocks.values())
    assert.deepEqual(
      pulls.map(({ product }) => product).toSorted(),
      finding.products.map((one) => one.product),
    );
});

test('the order made is that of the times, whatever the order of the record', () => {
  const made = orderOf({ ...finding, pieces: finding.pieces.toReversed() })?.made ?? [];
  assert.deepEqual(
    made.map(({ position }) => position),
    made.map((_, index) => index + 1),
  );
  const times = made.map(({ pulledAt }) => Date.parse(pulledAt));
  assert.deepEqual(
    times,
    times.toSorted((a, b) => a - b),
  );
  assert.equal(made.length, 30);
});

test('the mean number of like neighbours by lot is the mean over all orders, tried one by one', () => {
  const products = ['a', 'a', 'a', 'b', 'b', 'c'];
  const orders = permutations(products);
  const counted = orders.map((order) => likeNeighbours(order.map((product) => ({ product }))).value ?? Number.NaN);
  const mean = counted.reduce((sum, count) => sum + count, 0) / orders.length;
  const told = likeNeighbours(products.map((product) => ({ product })));
  const byLot = told.inputs.find(({ name }) => name === 'by lot, in the mean')?.value ?? Number.NaN;
  assert.ok(Math.abs(mean - byLot) < 1e-12);
  assert.equal(told.value, told.inputs.find(({ name }) => name === 'product by product')?.value);
});

function permutations<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, index) =>
    permutations([...list.slice(0, index), ...list.slice(index + 1)]).map((rest) => [one, ...rest]),
  );
}
