import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import * as few from '../../../src/statistics/few-pieces/index.ts';
import { seededRandom } from '../../../src/statistics/random.ts';

const bound90 = { coverage: 0.9, confidence: 0.95, side: 'lower' } as const;

/** Every number in a result, however deep, with the path to it. */
function numbersIn(value: unknown, path = ''): { path: string; number: number }[] {
  if (typeof value === 'number') return [{ path, number: value }];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

const procedures: Readonly<
  Record<string, (values: readonly number[]) => { readonly sentence: string; readonly doubts: readonly string[] }>
> = {
  meanInterval: (values) => few.meanInterval({ values }, { confidence: 0.95 }),
  deviationInterval: (values) => few.deviationInterval({ values }, { confidence: 0.95 }),
  toleranceLower: (values) => few.toleranceBound({ values, ...bound90 }),
  toleranceBoth: (values) => few.toleranceBound({ values, ...bound90, side: 'both' }),
  toleranceKnown: (values) => few.toleranceBound({ values, ...bound90, knownSd: 2 }),
  characteristic: (values) => few.characteristicValue({ values }),
  characteristicKnown: (values) => few.characteristicValue({ values }, { knownVariation: 0.05 }),
  normalBasis: (values) => few.normalBasis({ values }, { basis: 'A' }),
  hansonKoopmans: (values) => few.hansonKoopmansBasis(values, { basis: 'B' }),
  nonparametric: (values) => few.nonparametricBound(values, bound90),
  grubbs: (values) => few.grubbsTest(values, { significance: 0.05, end: 'either' }),
  esd: (values) => few.generalizedEsd(values, { significance: 0.05, mostOutliers: 3 }),
  andersonDarling: few.andersonDarlingNormal,
  shapiroWilk: few.shapiroWilk,
};

const samples: Readonly<Record<string, readonly number[]>> = {
  'no value': [],
  'one value': [31.4],
  'two values': [31.4, 32.1],
  'three values': [31.4, 32.1, 30.2],
  'two equal values': [5, 5],
  'ten equal values': Array.from({ length: 10 }, () => 5),
  'all but one equal': [5, 5, 5, 5, 6],
  'all zero': [0, 0, 0],
  'a zero among others': [0, 1, 2, 3],
  'values below zero': [-3, -2, -1, 0, 1],
  'values huge and tiny': [1e-300, 1, 1e150],
};

for (const [name, procedure] of Object.entries(procedures)) {
  test(`${name} of few, equal or odd values says what can be said and never gives NaN`, () => {
    for (const [what, values] of Object.entries(samples)) {
      const result = procedure(values);
      for (const { path, number } of numbersIn(result))
        assert.ok(Number.isFinite(number), `${what}: ${path} is ${number}`);
      assert.match(result.sentence, /^[A-Z0-9].*\.$/s, `${what}: ${result.sentence}`);
      assert.doesNotMatch(result.sentence, /NaN|undefined|null|Infinity/, what);
      assert.ok(
        result.doubts.every((doubt) => doubt.length > 10),
        what,
      );
      if (values.length < 2 && !name.endsWith('Known')) assert.ok(result.doubts.length > 0, `${what} has no doubt`);
    }
  });

  test(`${name} refuses a value that is not a number`, () => {
    assert.throws(() => procedure([1, 2, Number.NaN, 4, 5, 6, 7, 8]), RangeError);
  });
}

test('one piece bears a bound only if the scatter is known beforehand', () => {
  const alone = few.toleranceBound({ values: [100], ...bound90 });
  assert.equal(alone.lower, null);
  assert.deepEqual(alone.doubts, ['One value has no scatter to judge by.']);
  const known = few.toleranceBound({ values: [100], ...bound90, knownSd: 4 });
  assert.ok(known.lower !== null && known.lower < 100 - 4 * 2.9 && known.lower > 100 - 4 * 3);
});

test('equal values promise nothing, because their scatter is finer than the readings', () => {
  assert.equal(few.toleranceBound({ values: [5, 5, 5], ...bound90 }).lower, null);
  assert.equal(few.meanInterval({ values: [5, 5, 5] }, { confidence: 0.95 }).lower, null);
});

test('a summary gives the same bound as the values it sums up', () => {
  const values = [101.2, 99.4, 103.3, 98.8, 100.9];
  const direct = few.toleranceBound({ values, ...bound90 });
  const summed = few.toleranceBound({ n: 5, mean: direct.mean ?? 0, sd: direct.sd, ...bound90 });
  assert.deepEqual(summed, direct);
});

test('more pieces, less coverage or less confidence never widen a tolerance factor', () => {
  const share = fc.double({ min: 0.05, max: 0.995, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 200 }), share, share, (n, coverage, confidence) => {
      for (const factor of [few.oneSidedToleranceFactor, few.twoSidedToleranceFactor]) {
        const k = factor({ n, coverage, confidence });
        assert.ok(Number.isFinite(k));
        assert.ok(factor({ n, coverage: coverage * 0.99, confidence }) < k);
        assert.ok(factor({ n, coverage, confidence: confidence * 0.99 }) < k);
      }
      if (coverage > 0.6 && confidence > 0.6) {
        const k = few.oneSidedToleranceFactor({ n, coverage, confidence });
        assert.ok(few.oneSidedToleranceFactor({ n: n + 1, coverage, confidence }) < k);
      }
    }),
    { seed: 7, numRuns: 60 },
  );
});

test('a bound moves with the unit of the values', () => {
  const forces = fc.array(fc.double({ min: 50, max: 150, noNaN: true }), { minLength: 3, maxLength: 12 });
  fc.assert(
    fc.property(forces, (values) => {
      const one = few.toleranceBound({ values, ...bound90 });
      const thousand = few.toleranceBound({ values: values.map((value) => 1000 * value), ...bound90 });
      if (one.lower === null || thousand.lower === null) return;
      assert.ok(Math.abs(thousand.lower - 1000 * one.lower) < 1e-6 * (1 + Math.abs(thousand.lower)));
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('of simulated samples of five, as many bounds hold as the confidence says', () => {
  const random = seededRandom(17);
  const campaigns = 4000;
  const held = { one: 0, two: 0, mean: 0, deviation: 0 };
  const k1 = few.oneSidedToleranceFactor({ n: 5, coverage: 0.9, confidence: 0.95 });
  const k2 = few.twoSidedToleranceFactor({ n: 5, coverage: 0.9, confidence: 0.95 });
  for (let campaign = 0; campaign < campaigns; campaign += 1) {
    const values = Array.from({ length: 5 }, () => random.normal());
    const { mean, sd } = few.sampleOf({ values });
    if (mean === null || sd === null) throw new Error('five normal values have a scatter');
    if (1 - normal(mean - k1 * sd) >= 0.9) held.one += 1;
    if (normal(mean + k2 * sd) - normal(mean - k2 * sd) >= 0.9) held.two += 1;
    const interval = few.meanInterval({ values }, { confidence: 0.95 });
    if ((interval.lower ?? 1) <= 0 && (interval.upper ?? -1) >= 0) held.mean += 1;
    const scatter = few.deviationInterval({ values }, { confidence: 0.95 });
    if ((scatter.lower ?? 2) <= 1 && (scatter.upper ?? 0) >= 1) held.deviation += 1;
  }
  // Four standard errors of 4000 campaigns at 95 % are 1.4 %.
  for (const [name, count] of Object.entries(held))
    assert.ok(Math.abs(count / campaigns - 0.95) < 0.014, `${name}: ${count}`);
});

/** Series of the error function, another route than the distribution used by the bounds. */
function normal(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 1; k < 400 && Math.abs(term) > 1e-17; k += 1) {
    term *= (z * z) / (2 * k + 1);
    sum += term;
  }
  return Math.abs(z) > 8 ? (z > 0 ? 1 : 0) : 0.5 + (sum * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
}

test('the least of three pieces promises a third of the product at 95 % confidence, and 29 would promise 90 %', () => {
  const found = few.nonparametricBound([101, 99, 104], bound90);
  assert.equal(found.bound, null);
  assert.equal(found.outermost, 99);
  assert.ok(Math.abs((found.coverageOfOutermost ?? 0) ** 3 - 0.05) < 1e-12);
  assert.equal(found.piecesNeeded, 29);
  assert.match(found.sentence, /at least 36\.8 % of all such pieces reach 99 or more/);
});

test('an upper nonparametric bound is the lower one of the values turned round', () => {
  const values = Array.from({ length: 60 }, (_, index) => (index * 37) % 61);
  const lower = few.nonparametricBound(values, bound90);
  const upper = few.nonparametricBound(
    values.map((value) => -value),
    { ...bound90, side: 'upper' },
  );
  assert.equal(upper.bound, -(lower.bound ?? Number.NaN));
  assert.equal(upper.rank, lower.rank);
});

test('an outlier is pointed to and stays in the list', () => {
  const values = [100, 101, 99, 100.5, 99.5, 130];
  const found = few.grubbsTest(values, { significance: 0.05, end: 'either', unit: 'kN' });
  assert.equal(found.index, 5);
  assert.equal(found.standsOut, true);
  assert.equal(found.n, 6);
  assert.match(found.sentence, /130 kN stands out.*It is kept/);
  assert.equal(few.grubbsTest(values, { significance: 0.05, end: 'least' }).standsOut, false);
});

test("Grubbs' p-value at the critical value is the significance", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 4, max: 40 }),
      fc.double({ min: 0.001, max: 0.1, noNaN: true }),
      (n, significance) => {
        const random = seededRandom(n);
        const values = Array.from({ length: n }, () => random.normal());
        const { statistic, p } = few.grubbsTest(values, { significance, end: 'either' });
        const critical = few.grubbsCritical(n, { significance: Math.min(p ?? 1, 0.999), end: 'either' });
        if ((p ?? 1) < 0.999) assert.ok(Math.abs(critical - (statistic ?? 0)) < 1e-9);
      },
    ),
    { seed: 7, numRuns: 100 },
  );
});

test('the first critical value of the many-outlier test is the one of Grubbs', () => {
  for (const n of [4, 10, 54]) {
    const grubbs = few.grubbsCritical(n, { significance: 0.05, end: 'either' });
    assert.ok(Math.abs(few.esdCritical(n, 1, 0.05) - grubbs) < 1e-12);
  }
});

test('a normality test of few pieces says that passing is no evidence', () => {
  const found = few.shapiroWilk([100, 103, 98, 101, 99]);
  assert.ok((found.p ?? 0) > 0.5);
  assert.match(found.doubts.join(' '), /passing is no evidence/);
  assert.match(found.sentence, /so few could hardly do so/);
});

test('an exact binomial interval shuts out its own tails: the limits are where the count has the tail probability', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.nat(60), (n, seed) => {
      const count = seed % (n + 1);
      const { lower, upper } = few.proportionInterval({ count, n }, { confidence: 0.9 });
      assert.ok(lower <= count / n && count / n <= upper);
      if (lower > 0) {
        const { p } = few.binomialTest({ count, n }, { supposed: lower, alternative: 'greater' });
        assert.ok(Math.abs(p - 0.05) < 1e-9);
      }
      if (upper < 1) {
        const { p } = few.binomialTest({ count, n }, { supposed: upper, alternative: 'less' });
        assert.ok(Math.abs(p - 0.05) < 1e-9);
      }
    }),
    { seed: 7, numRuns: 150 },
  );
});

test('five pieces proved without failure promise 55 % at 95 % confidence, one failure less, none tried nothing', () => {
  const clean = few.proofRun({ n: 5, failures: 0 }, { confidence: 0.95 });
  assert.ok(Math.abs(clean.reliability ** 5 - 0.05) < 1e-14);
  assert.match(clean.sentence, /^5 pieces passed and none failed: with 95 % confidence at least 54\.9 %/);
  const flawed = few.proofRun({ n: 5, failures: 1 }, { confidence: 0.95 });
  assert.ok(flawed.reliability < clean.reliability && flawed.reliability > 0);
  assert.equal(few.proofRun({ n: 5, failures: 5 }, { confidence: 0.95 }).reliability, 0);
  assert.equal(few.proofRun({ n: 0, failures: 0 }, { confidence: 0.95 }).reliability, 0);
  const withFailures = few.proofRunSize({ reliability: 0.9, confidence: 0.95, failuresAllowed: 1 });
  assert.ok(few.proofRun({ n: withFailures, failures: 1 }, { confidence: 0.95 }).reliability >= 0.9);
  assert.ok(few.proofRun({ n: withFailures - 1, failures: 1 }, { confidence: 0.95 }).reliability < 0.9);
});

test('a share or a count that means nothing is refused', () => {
  assert.throws(
    () => few.toleranceBound({ values: [1, 2], coverage: 95, confidence: 0.95, side: 'lower' }),
    RangeError,
  );
  assert.throws(() => few.toleranceBound({ n: -1, mean: 1, sd: 1, ...bound90 }), RangeError);
  assert.throws(() => few.toleranceBound({ n: 3, mean: 1, sd: -1, ...bound90 }), RangeError);
  assert.throws(() => few.characteristicValue({ values: [1, 2, 3] }, { knownVariation: 4 }), RangeError);
  assert.throws(() => few.proportionInterval({ count: 3, n: 2 }, { confidence: 0.9 }), RangeError);
  assert.throws(() => few.proofRun({ n: 2, failures: 3 }, { confidence: 0.9 }), RangeError);
  assert.throws(() => few.hansonKoopmansFactor({ n: 5, rank: 1, coverage: 0.9, confidence: 0.95 }), RangeError);
});
