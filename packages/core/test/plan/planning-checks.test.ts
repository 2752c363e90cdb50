import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  chanceAllPass,
  detectableDifference,
  detectableShare,
  piecesToBoundFraction,
  piecesToShowConformity,
  piecesToTellApart,
  piecesToTellSharesApart,
  powerAmongProducts,
  powerToShowConformity,
  powerToTellApart,
  powerToTellSharesApart,
  simulatePower,
} from '../../src/plan/index.ts';
import { studentQuantile } from '../../src/statistics/distribution/index.ts';
import { inputsOf, publishedTest } from '../uncertainty/published-check.ts';

publishedTest('r-power-t', 'power and pieces to tell two means apart', () => {
  const { sd, alpha } = inputsOf<{ sd: number; alpha: number }>('r-power-t');
  const question = { difference: sd, standardDeviations: [sd, sd], alpha } as const;
  return {
    power_n20_delta1: powerToTellApart(20, question),
    n_power90_two_sided: piecesToTellApart(question, 0.9).exact,
    n_power90_one_sided: piecesToTellApart({ ...question, sides: 1 }, 0.9).exact,
  };
});

publishedTest('r-power-prop', 'power and pieces to tell two shares apart', () => {
  const { p1, p2, alpha } = inputsOf<{ p1: number; p2: number; alpha: number }>('r-power-prop');
  const question = { first: p1, second: p2, alpha };
  return {
    power_n50: powerToTellSharesApart(50, question),
    n_power90: piecesToTellSharesApart(question, 0.9)?.exact ?? null,
    p2_n50_power90: detectableShare(50, question, 0.9),
  };
});

publishedTest('success-run-sample-sizes', 'pieces without failure that bound the share that holds', () => {
  const { R, C } = inputsOf<{ R: number[]; C: number[] }>('success-run-sample-sizes');
  return {
    n: R.map(
      (reliability, index) => piecesToBoundFraction({ reliability, confidence: C[index] ?? 0 }).pieces ?? Number.NaN,
    ),
  };
});

test('the number planned is the least that does, for differences, shares and conformity', () => {
  const cases = fc.record({
    difference: fc.double({ min: 0.3, max: 3, noNaN: true }),
    ratio: fc.double({ min: 0.5, max: 2, noNaN: true }),
    power: fc.double({ min: 0.5, max: 0.95, noNaN: true }),
  });
  fc.assert(
    fc.property(cases, ({ difference, ratio, power }) => {
      const question = { difference, standardDeviations: [1, ratio] } as const;
      const { pieces } = piecesToTellApart(question, power);
      assert.ok(pieces !== null && (powerToTellApart(pieces, question) ?? 0) >= power);
      if (pieces > 2) assert.ok((powerToTellApart(pieces - 1, question) ?? 1) < power);
    }),
    { seed: 7, numRuns: 40 },
  );
});

test('the least difference shown has the power asked', () => {
  const difference = detectableDifference(5, { standardDeviations: [0.8, 0.8] }, 0.9);
  assert.ok(difference !== null);
  const power = powerToTellApart(5, { difference, standardDeviations: [0.8, 0.8] });
  assert.ok(Math.abs((power ?? 0) - 0.9) < 1e-9);
});

const question = {
  expectedMean: 35,
  cov_pct: 3,
  limit: 32,
  side: 'lower',
  confidence: 0.95,
  of: { share: 0.95 },
} as const;

test('pieces to show conformity of a share and of the mean are the least that do', () => {
  for (const subject of ['mean', { share: 0.95 }] as const) {
    const asked = { ...question, of: subject };
    const plan = piecesToShowConformity(asked, 0.9);
    assert.ok(plan.pieces !== null);
    assert.ok((powerToShowConformity(plan.pieces, asked) ?? 0) >= 0.9);
    assert.ok(plan.pieces === 2 || (powerToShowConformity(plan.pieces - 1, asked) ?? 1) < 0.9);
    assert.match(plan.sentence, new RegExp(`${plan.pieces} pieces show`));
  }
});

test('the power to show the mean agrees with pulling simulated pieces', () => {
  const n = 4;
  const asked = { ...question, expectedMean: 33, of: 'mean' } as const;
  const sd = 0.03 * 33;
  const factor = studentQuantile(0.95, n - 1) / Math.sqrt(n);
  const simulated = simulatePower({
    seed: 5,
    trials: 20_000,
    trial: (random) => {
      const values = Array.from({ length: n }, () => 33 + sd * random.normal());
      const mean = values.reduce((sum, value) => sum + value, 0) / n;
      const s = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
      return mean - factor * s > 32;
    },
  });
  const exact = powerToShowConformity(n, asked) ?? 0;
  // Five standard errors of a share of 20000.
  assert.ok(
    Math.abs(simulated.power - exact) < 5 * Math.sqrt((exact * (1 - exact)) / 20_000),
    `${simulated.power} ${exact}`,
  );
});

test('an upper limit is the mirror of a lower one, and a guard band asks for more pieces', () => {
  const mirrored = { ...question, side: 'upper', limit: 38 } as const;
  assert.equal(piecesToShowConformity(mirrored).pieces, piecesToShowConformity(question).pieces);
  const guarded = piecesToShowConformity({ ...question, guard: 0.5 }).pieces ?? 0;
  assert.ok(guarded > (piecesToShowConformity(question).pieces ?? 0));
});

test('what cannot be shown by any number of pieces is said so', () => {
  const below = piecesToShowConformity({ ...question, expectedMean: 31.9 });
  assert.deepEqual([below.pieces, below.power], [null, null]);
  assert.match(below.sentence, /does not lie inside the limit/);
  const wide = piecesToShowConformity({ ...question, cov_pct: 6 });
  assert.match(wide.sentence, /more than the requirement leaves/);
  const near = piecesToShowConformity({ ...question, expectedMean: 32.0001, of: 'mean' });
  assert.match(near.sentence, /100000/);
  assert.equal(piecesToTellApart({ difference: 0, standardDeviations: [1, 1] }).pieces, null);
  assert.match(piecesToTellApart({ difference: 1e-5, standardDeviations: [1, 1] }).sentence, /100000/);
  assert.equal(piecesToTellSharesApart({ first: 0.5, second: 0.5 }), null);
  assert.equal(detectableShare(2, { first: 0.5 }), null);
});

test('no scatter at all gives two pieces and no NaN', () => {
  const still = piecesToTellApart({ difference: 1, standardDeviations: [0, 0] });
  assert.deepEqual([still.pieces, still.power, still.doubts.length], [2, null, 1]);
  const conforming = piecesToShowConformity({ ...question, cov_pct: 0 });
  assert.deepEqual([conforming.pieces, conforming.power], [2, null]);
  assert.equal(detectableDifference(3, { standardDeviations: [0, 0] }), null);
});

test('the chance that all pieces pass falls with their number', () => {
  const one = chanceAllPass(1, { ...question, guard: 0.5 });
  const five = chanceAllPass(5, { ...question, guard: 0.5 });
  assert.ok(Math.abs(five.all - one.single ** 5) < 1e-15);
  assert.ok(five.all < one.all);
  assert.equal(chanceAllPass(5, { ...question, cov_pct: 0 }).all, 1);
});

test('forgiven failures cost pieces, and each plan holds the confidence it was asked', () => {
  let before = 0;
  for (const allowedFailures of [0, 1, 2, 3]) {
    const plan = piecesToBoundFraction({ reliability: 0.95, confidence: 0.9, allowedFailures });
    assert.ok(plan.pieces !== null && plan.pieces > before);
    assert.ok((plan.confidence ?? 0) >= 0.9);
    before = plan.pieces;
  }
});

test('among more products a difference is told less often, and simulation agrees with the formula for two', () => {
  const power = (products: number) =>
    powerAmongProducts({ products, difference: 2, standardDeviation: 1, piecesEach: 5, seed: 6, trials: 1500 });
  const two = power(2);
  const exact = powerToTellApart(5, { difference: 2, standardDeviations: [1, 1] }) ?? 0;
  // Welch's test on five pieces is a little more cautious than the t test with pooled scatter.
  assert.ok(exact > two.lower - 0.01 && exact < two.upper + 0.03, `${exact} in ${two.lower} to ${two.upper}`);
  assert.ok(power(5).power < two.power);
  assert.deepEqual(power(2), two);
});

test('misuse is refused', () => {
  assert.throws(() => powerToTellApart(1, { difference: 1, standardDeviations: [1, 1] }), RangeError);
  assert.throws(() => powerToTellApart(5, { difference: Number.NaN, standardDeviations: [1, 1] }), RangeError);
  assert.throws(() => piecesToBoundFraction({ reliability: 1, confidence: 0.9 }), RangeError);
  assert.throws(() => piecesToBoundFraction({ reliability: 0.9, confidence: 0.9, allowedFailures: -1 }), RangeError);
  assert.throws(() => piecesToShowConformity({ ...question, confidence: 0 }), RangeError);
  assert.throws(() => powerToShowConformity(1, question), RangeError);
  assert.throws(() => simulatePower({ trial: () => true, trials: 0, seed: 1 }), RangeError);
});
