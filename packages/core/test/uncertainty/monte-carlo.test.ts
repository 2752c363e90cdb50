import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  type Budget,
  coverageIntervals,
  estimated,
  evenlyWithin,
  type InputDistribution,
  type MeasurementModel,
  type MonteCarloResult,
  momentsOf,
  monteCarlo,
  monteCarloOfModel,
  numericalTolerance,
  propagate,
  statementOf,
  validateGum,
} from '../../src/uncertainty/index.ts';
import { agrees, inputsOf, origin, publishedTest } from './published-check.ts';

const unit = Math.sqrt(3);
const normal: InputDistribution = { kind: 'normal', mean: 0, standardUncertainty: 1 };

function modelOf(
  inputs: Readonly<Record<string, InputDistribution>>,
  evaluate: (values: readonly number[]) => number,
): MeasurementModel {
  return {
    quantity: 'result',
    unit: '',
    inputs: Object.entries(inputs).map(([name, distribution]) => ({ name, unit: '', distribution, source: 'check' })),
    evaluate,
  };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

const compared = (budget: Budget, run: MonteCarloResult, digits: 1 | 2) =>
  validateGum({
    estimate: budget.value ?? Number.NaN,
    standardUncertainty: budget.combinedStandardUncertainty ?? Number.NaN,
    expandedUncertainty: budget.expandedUncertainty ?? Number.NaN,
    monteCarlo: run,
    digits,
  });

/** A figure of a run stands to the run's own tolerance. */
const slackOf = (keys: readonly string[], { tolerance, converged }: MonteCarloResult, scale = 1) => {
  assert.ok(converged);
  return Object.fromEntries(keys.map((key) => [key, tolerance * scale]));
};

test(`jcgm101-9.2.2: four normal inputs add to a normal [${origin('jcgm101-9.2.2')}]`, () => {
  const run = monteCarloOfModel(modelOf({ a: normal, b: normal, c: normal, d: normal }, sum), {
    seed: 1,
    adaptive: { digits: 2 },
  });
  const { lower: low, upper: high } = run.symmetric;
  const found = { y: run.estimate, u: run.standardUncertainty, low, high };
  agrees('jcgm101-9.2.2', found, { slack: slackOf(Object.keys(found), run) });
});

test(`jcgm101-9.2.3: four rectangular inputs are narrower in the tails [${origin('jcgm101-9.2.3')}]`, () => {
  const one = evenlyWithin(unit);
  const model = modelOf({ a: one, b: one, c: one, d: one }, sum);
  const run = monteCarloOfModel(model, { seed: 2, adaptive: { digits: 2 } });
  const found = {
    u: run.standardUncertainty,
    high_analytic: 2 * unit * (2 - (3 / 5) ** (1 / 4)),
    low: run.symmetric.lower,
    high: run.symmetric.upper,
    gum_high: propagate(model).budget.expandedUncertainty,
  };
  agrees('jcgm101-9.2.3', found, { slack: slackOf(['u', 'low', 'high'], run) });
});

test(`jcgm101-9.2.4: one rectangular input that dominates makes the budget's interval too wide, and it fails the comparison [${origin('jcgm101-9.2.4')}]`, () => {
  const one = evenlyWithin(unit);
  const model = modelOf({ a: one, b: one, c: one, d: evenlyWithin(10 * unit) }, sum);
  const run = monteCarloOfModel(model, { seed: 3, adaptive: { digits: 3 } });
  const { budget } = propagate(model);
  const found = {
    u: run.standardUncertainty,
    low: run.symmetric.lower,
    high: run.symmetric.upper,
    gum_high: budget.expandedUncertainty,
  };
  agrees('jcgm101-9.2.4', found, { slack: slackOf(['u', 'low', 'high'], run) });
  const validation = compared(budget, run, 2);
  assert.equal(validation.isValid, false);
  assert.match(validation.sentence, /does not agree/);
});

test(`jcgm101-9.3-mass: a model flat at its estimates hides uncertainty from the first order, and a doubt says so [${origin('jcgm101-9.3-mass')}]`, () => {
  const model = modelOf(
    {
      mRc: { kind: 'normal', mean: 100_000, standardUncertainty: 0.05 },
      dmRc: { kind: 'normal', mean: 1.234, standardUncertainty: 0.02 },
      air: { kind: 'rectangular', lower: 1.1, upper: 1.3 },
      weight: { kind: 'rectangular', lower: 7000, upper: 9000 },
      reference: { kind: 'rectangular', lower: 7950, upper: 8050 },
    },
    ([mRc = 0, dmRc = 0, air = 0, weight = 0, reference = 0]) =>
      (mRc + dmRc) * (1 + (air - 1.2) * (1 / weight - 1 / reference)) - 100_000,
  );
  const run = monteCarloOfModel(model, { seed: 4, adaptive: { digits: 2 }, interval: 'shortest' });
  const { budget, secondOrderStandardUncertainty: second, isBent } = propagate(model);
  assert.ok(isBent);
  assert.match(budget.doubts.join(), /bends/);
  const [value, U] = [budget.value ?? 0, budget.expandedUncertainty ?? 0];
  const U2 = (budget.coverageFactor ?? 0) * (second ?? 0);
  const found = {
    mcm_dm_mg: run.estimate,
    mcm_u_mg: run.standardUncertainty,
    mcm_low: run.shortest.lower,
    mcm_high: run.shortest.upper,
    gum1_u_mg: budget.combinedStandardUncertainty,
    gum1_low: value - U,
    gum1_high: value + U,
    gum2_u_mg: second,
    gum2_low: value - U2,
    gum2_high: value + U2,
  };
  agrees('jcgm101-9.3-mass', found, { slack: slackOf(['mcm_dm_mg', 'mcm_u_mg', 'mcm_low', 'mcm_high'], run) });
  assert.equal(compared(budget, run, 1).isValid, false);
});

for (const id of ['jcgm101-9.4-x1-0.000', 'jcgm101-9.4-x1-0.010', 'jcgm101-9.4-x1-0.050']) {
  test(`${id}: a sum of squares near its boundary [${origin(id)}]`, () => {
    const { x1 = 0, x2 = 0, u1 = 0, u2 = 0 } = inputsOf<Record<string, number>>(id);
    const model = modelOf({ x1: estimated(x1, u1), x2: estimated(x2, u2) }, ([a = 0, b = 0]) => 1e6 * (a * a + b * b));
    const run = monteCarloOfModel(model, { seed: 5, adaptive: { digits: 2 }, interval: 'shortest' });
    const { budget, secondOrderStandardUncertainty: second } = propagate(model);
    const found = {
      mcm_estimate: run.estimate,
      mcm_u: run.standardUncertainty,
      mcm_low: run.shortest.lower,
      mcm_high: run.shortest.upper,
      gum_estimate: budget.value,
      gum1_u: budget.combinedStandardUncertainty,
    };
    agrees(id, found, { slack: slackOf(['mcm_estimate', 'mcm_u', 'mcm_low', 'mcm_high'], run) });
    assert.ok(Math.abs((second ?? 0) - 1e6 * Math.sqrt(4 * u1 ** 4 + 4 * u1 ** 2 * x1 ** 2)) < 1e-6);
  });
}

test(`jcgm101-9.5-gauge-block: t, arc-sine and inexact limits together [${origin('jcgm101-9.5-gauge-block')}]`, () => {
  const { Lnom_nm, p } = inputsOf<{ Lnom_nm: number; p: number }>('jcgm101-9.5-gauge-block');
  const model = modelOf(
    {
      Ls: estimated(50_000_623, 25, 18),
      D: estimated(215, 6, 24),
      d1: estimated(0, 4, 5),
      d2: estimated(0, 7, 8),
      alpha: { kind: 'rectangular', lower: 9.5e-6, upper: 13.5e-6 },
      theta0: estimated(-0.1, 0.2),
      Delta: { kind: 'arc sine', lower: -0.5, upper: 0.5 },
      dAlpha: { kind: 'rectangular, limits inexact', lower: -1e-6, upper: 1e-6, inexactness: 1e-7 },
      dTheta: { kind: 'rectangular, limits inexact', lower: -0.05, upper: 0.05, inexactness: 0.025 },
    },
    ([Ls = 0, D = 0, d1 = 0, d2 = 0, alpha = 0, theta0 = 0, Delta = 0, dAlpha = 0, dTheta = 0]) =>
      Ls + D + d1 + d2 - Ls * (dAlpha * (theta0 + Delta) + alpha * dTheta) - Lnom_nm,
  );
  const run = monteCarloOfModel(model, { seed: 6, adaptive: { digits: 2 }, coverageProbability: p });
  const { budget } = propagate(model, { coverage: { probability: p } });
  const [value, U] = [budget.value ?? 0, budget.expandedUncertainty ?? 0];
  const found = {
    mcm_estimate: run.estimate,
    mcm_u: run.standardUncertainty,
    mcm_low: run.symmetric.lower,
    mcm_high: run.symmetric.upper,
    gum_u: budget.combinedStandardUncertainty,
    gum_low: value - U,
    gum_high: value + U,
  };
  agrees('jcgm101-9.5-gauge-block', found, { slack: slackOf(['mcm_estimate', 'mcm_u', 'mcm_low', 'mcm_high'], run) });
});

publishedTest('jcgm101-6.4.3-ctrap', 'limits that are inexact widen a rectangle', () => {
  const { a = 0, b = 0, d = 0 } = inputsOf<Record<string, number>>('jcgm101-6.4.3-ctrap');
  const distribution = { kind: 'rectangular, limits inexact', lower: a, upper: b, inexactness: d } as const;
  const u = momentsOf(distribution).standardDeviation ?? Number.NaN;
  return { u2: u * u, u, u_exact_limits: statementOf(distribution).standardUncertainty };
});

test('draws of every distribution have the mean and scatter the distribution says', () => {
  const kinds: readonly InputDistribution[] = [
    { kind: 'normal', mean: 3, standardUncertainty: 2 },
    { kind: 't', mean: 3, standardUncertainty: 2, degreesOfFreedom: 9 },
    { kind: 'rectangular', lower: -1, upper: 5 },
    { kind: 'rectangular, limits inexact', lower: -1, upper: 5, inexactness: 1 },
    { kind: 'trapezoidal', lower: -1, upper: 5, top: 0.4 },
    { kind: 'triangular', lower: -1, upper: 5 },
    { kind: 'arc sine', lower: -1, upper: 5 },
  ];
  for (const distribution of kinds) {
    const run = monteCarlo({ model: sum, inputs: [{ distribution }], seed: 8, adaptive: { digits: 2 } });
    const { mean, standardDeviation } = momentsOf(distribution);
    assert.ok(run.converged, distribution.kind);
    assert.ok(Math.abs(run.estimate - mean) <= run.tolerance, `${distribution.kind}: mean ${run.estimate}`);
    assert.ok(Math.abs(run.standardUncertainty - (standardDeviation ?? 0)) <= run.tolerance, distribution.kind);
  }
});

test('correlated normal inputs are drawn together, and full correlation is allowed', () => {
  const run = (coefficient: number) =>
    monteCarlo({
      model: sum,
      inputs: [
        { name: 'a', distribution: normal },
        { name: 'b', distribution: normal },
      ],
      correlation: [{ between: ['a', 'b'], coefficient }],
      seed: 9,
      adaptive: { digits: 2 },
    });
  for (const r of [-0.5, 0.8, 1]) {
    const found = run(r);
    assert.ok(Math.abs(found.standardUncertainty - Math.sqrt(2 + 2 * r)) <= found.tolerance, `${r}`);
  }
  assert.ok(run(-1).standardUncertainty < 1e-12);
});

test('the same seed gives the same run, another seed another', () => {
  const run = (seed: number) =>
    monteCarlo({ model: sum, inputs: [{ distribution: normal }], seed, adaptive: { digits: 1 } });
  assert.deepEqual(run(10), run(10));
  assert.notEqual(run(10).estimate, run(11).estimate);
});

test('a run stopped before it stands still says so', () => {
  const run = monteCarlo({
    model: sum,
    inputs: [{ distribution: normal }],
    seed: 12,
    adaptive: { digits: 3, mostTrials: 100_000 },
  });
  assert.equal(run.converged, false);
  assert.equal(run.trials, 100_000);
  assert.match(run.doubts.join(), /fewer digits hold/);
});

test('an input without uncertainty gives a point, not NaN', () => {
  const run = monteCarlo({
    model: sum,
    inputs: [{ distribution: { kind: 'normal', mean: 4, standardUncertainty: 0 } }],
    seed: 13,
    adaptive: { digits: 2 },
  });
  assert.deepEqual([run.estimate, run.standardUncertainty, run.shortest.lower, run.converged], [4, 0, 4, true]);
});

test('a model that gives no number, digits out of range, a bad probability and no inputs are refused', () => {
  const run = (change: object) =>
    monteCarlo({ model: sum, inputs: [{ distribution: normal }], seed: 1, adaptive: { digits: 2 }, ...change });
  assert.throws(() => run({ model: () => Number.NaN }), RangeError);
  assert.throws(() => run({ adaptive: { digits: 0 } }), RangeError);
  assert.throws(() => run({ coverageProbability: 1 }), RangeError);
  assert.throws(() => run({ inputs: [] }), RangeError);
  assert.throws(() => run({ seed: 0.5 }), RangeError);
});

test('the numerical tolerance is half a unit of the last digit asked (JCGM 101:2008 7.9.2, its examples)', () => {
  assert.equal(numericalTolerance(0.000_35, 2), 0.5e-5);
  assert.equal(numericalTolerance(0.000_35, 1), 0.5e-4);
  assert.equal(numericalTolerance(2, 2), 0.05);
  assert.equal(numericalTolerance(0, 2), 0);
});

test('the shortest interval of a skew sample is not longer than the symmetric one', () => {
  const skew = Float64Array.from({ length: 10_000 }, (_, index) => -Math.log(1 - (index + 0.5) / 10_000));
  const found = coverageIntervals(skew, 0.95);
  assert.ok(found);
  assert.ok(found.shortest.upper - found.shortest.lower < found.symmetric.upper - found.symmetric.lower);
  assert.equal(found.shortest.lower, skew[0]);
  assert.equal(coverageIntervals(new Float64Array(0), 0.95), null);
});
