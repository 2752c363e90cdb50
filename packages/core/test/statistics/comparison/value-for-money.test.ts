import assert from 'node:assert/strict';
import { test } from 'node:test';
import { valueForMoney, type Worth } from '../../../src/statistics/comparison/index.ts';
import { seededRandom } from '../../../src/statistics/random.ts';
import { summarise } from '../../../src/statistics/summary.ts';

const ash = {
  name: 'Ash',
  force_kN: { value: 41.3, standardUncertainty: 0.4, degreesOfFreedom: 4 },
  mass_kg_per_m: { value: 1.38, standardUncertainty: 0.02 },
  price_per_m: { value: 6.4, standardUncertainty: 0 },
  specifiedForce_kN: 40,
};

function only(table: { readonly worths: readonly Worth[] }): Worth {
  const [worth] = table.worths;
  assert.ok(worth);
  return worth;
}

test('the uncertainty of a ratio is that of seeded draws of its parts', () => {
  const worth = only(valueForMoney([ash], { seed: 1 }).forcePerMass);
  const random = seededRandom(12);
  const drawn = Array.from({ length: 100_000 }, () => {
    const { force_kN: force, mass_kg_per_m: mass } = ash;
    const numerator = force.value + force.standardUncertainty * random.normal();
    return numerator / (mass.value + mass.standardUncertainty * random.normal());
  });
  const { mean, sd } = summarise(drawn);
  // 100 000 draws know a standard deviation to 0.22 %; first order leaves less than 0.1 % at these uncertainties.
  assert.ok(Math.abs((worth.standardUncertainty ?? 0) / (sd ?? 1) - 1) < 0.01);
  assert.ok(Math.abs((worth.value ?? 0) / (mean ?? 1) - 1) < 0.001);
});

test('with an exact divisor the limits are Student limits of the mean, divided', () => {
  const { forcePerPrice, margin } = valueForMoney([ash], { seed: 1 });
  // t(0.975, 4) = 2.776445, as tables of Student's t print it (common practice).
  const half = 2.776445 * 0.4;
  assert.ok(Math.abs((only(forcePerPrice).upper ?? 0) - (41.3 + half) / 6.4) < 1e-6);
  assert.ok(Math.abs((only(margin).lower ?? 0) - 100 * ((41.3 - half) / 40 - 1)) < 1e-5);
  assert.match(only(margin).sentence, /^Ash lies 3\.\d+ % above its specified force \(margin .* 95 %\)\.$/);
});

test('what all forces share widens the limits and leaves the order alone', () => {
  const birch = { ...ash, name: 'Birch', force_kN: { ...ash.force_kN, value: 41.0 } };
  const own = valueForMoney([ash, birch], { seed: 1 });
  const shared = valueForMoney([ash, birch], { seed: 1, sharedForceUncertainty: 0.01 });
  assert.ok((only(shared.margin).standardUncertainty ?? 0) > (only(own.margin).standardUncertainty ?? 0));
  assert.deepEqual(shared.margin.order, own.margin.order);
});

test('a price that is missing or nothing has no worth, with the reason', () => {
  const { price_per_m, ...unpriced } = ash;
  assert.equal(price_per_m.value, 6.4);
  const missing = only(valueForMoney([unpriced], { seed: 1 }).forcePerPrice);
  assert.equal(missing.value, null);
  assert.deepEqual(missing.doubts, ['no price is given']);
  const free = { ...ash, price_per_m: { value: 0, standardUncertainty: 0 } };
  const { forcePerPrice } = valueForMoney([free], { seed: 1 });
  assert.equal(only(forcePerPrice).value, null);
  assert.equal(forcePerPrice.order.notRanked.length, 1);
  const unlimited = only(valueForMoney([{ ...ash, specifiedForce_kN: 0 }], { seed: 1 }).margin);
  assert.equal(unlimited.value, null);
});

test('a very uncertain divisor is doubted', () => {
  const vague = { ...ash, price_per_m: { value: 6.4, standardUncertainty: 1 } };
  assert.equal(only(valueForMoney([vague], { seed: 1 }).forcePerPrice).doubts.length, 1);
});

test('misuse is refused', () => {
  const wrong = { ...ash, force_kN: { value: 41, standardUncertainty: -1 } };
  assert.throws(() => valueForMoney([wrong], { seed: 1 }), RangeError);
});
