import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import * as d from '../../../src/statistics/distribution/index.ts';
import { check, citation, statisticsChecks } from '../../reference-checks.ts';

const settings = { seed: 7, numRuns: 200 };
const tail = fc.double({ min: -27, max: -0.7, noNaN: true }).map(Math.exp);
const probability = fc.tuple(tail, fc.boolean()).map(([p, high]) => (high ? 1 - p : p));
const degrees = fc.double({ min: 0, max: 7, noNaN: true }).map(Math.exp);

function close(found: number, expected: number, relative: number, what: string): void {
  assert.ok(Math.abs(found - expected) <= relative * Math.abs(expected), `${what}: ${found} against ${expected}`);
}

/** The nearer tail is compared, because the farther one hides any error. */
function sameProbability(p: number, lower: number, upper: number, what: string): void {
  if (p <= 0.5) close(lower, p, 1e-11, what);
  else close(upper, 1 - p, 1e-11, what);
}

test('a quantile leads back to its probability, in both tails of every family', () => {
  fc.assert(
    fc.property(probability, degrees, degrees, (p, nu, other) => {
      const z = d.normalQuantile(p);
      sameProbability(p, d.normalCdf(z), d.normalUpper(z), 'normal');
      const t = d.studentQuantile(p, nu);
      sameProbability(p, d.studentCdf(t, nu), d.studentUpper(t, nu), `t ${nu}`);
      const x = d.chiSquaredQuantile(p, nu);
      sameProbability(p, d.chiSquaredCdf(x, nu), d.chiSquaredUpper(x, nu), `chi-squared ${nu}`);
      const g = d.gammaQuantile(p, nu);
      sameProbability(p, d.gammaCdf(g, nu), d.gammaUpper(g, nu), `gamma ${nu}`);
      const f = d.fisherFQuantile(p, nu, other);
      sameProbability(p, d.fisherFCdf(f, nu, other), d.fisherFUpper(f, nu, other), `F ${nu} ${other}`);
    }),
    settings,
  );
});

test('a quantile of the beta distribution leads back to its probability', () => {
  const shape = fc.double({ min: -1, max: 6, noNaN: true }).map(Math.exp);
  fc.assert(
    fc.property(tail, shape, shape, (p, a, b) => {
      close(d.betaCdf(d.betaQuantile(p, a, b), a, b), p, 1e-10, `beta ${a} ${b}`);
    }),
    settings,
  );
});

test('a quantile of noncentral t leads back to its probability for delta from -40 to 40', () => {
  const delta = fc.double({ min: -40, max: 40, noNaN: true });
  fc.assert(
    fc.property(probability, degrees, delta, (p, nu, shift) => {
      const t = d.noncentralTQuantile(p, nu, shift);
      sameProbability(p, d.noncentralTCdf(t, nu, shift), d.noncentralTUpper(t, nu, shift), `${nu} ${shift}`);
    }),
    settings,
  );
});

test('a quantile of the studentized range leads back to its probability', () => {
  const groups = fc.integer({ min: 2, max: 40 });
  fc.assert(
    fc.property(probability, groups, degrees, (p, count, nu) => {
      const q = d.studentizedRangeQuantile(p, count, nu);
      const lower = d.studentizedRangeCdf(q, count, nu);
      sameProbability(p, lower, d.studentizedRangeUpper(q, count, nu), `${count} ${nu}`);
    }),
    { seed: 7, numRuns: 40 },
  );
});

test('both tails of noncentral t and of the studentized range add up to one', () => {
  const delta = fc.double({ min: -40, max: 40, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: -100, max: 100, noNaN: true }), degrees, delta, (t, nu, shift) => {
      const lower = d.noncentralTCdf(t, nu, shift);
      assert.ok(lower >= 0 && lower <= 1);
      assert.ok(Math.abs(lower + d.noncentralTUpper(t, nu, shift) - 1) < 1e-10);
      const range = Math.abs(t) / 10;
      const within = d.studentizedRangeCdf(range, 5, nu);
      assert.ok(Math.abs(within + d.studentizedRangeUpper(range, 5, nu) - 1) < 1e-10);
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('infinite degrees of freedom are the normal distribution', () => {
  assert.equal(d.studentQuantile(0.975, Infinity), d.normalQuantile(0.975));
  assert.equal(d.noncentralTCdf(2, Infinity, 1), d.normalCdf(1));
  close(d.fisherFQuantile(0.95, 3, Infinity), d.chiSquaredQuantile(0.95, 3) / 3, 1e-14, 'F');
  close(d.studentizedRangeUpper(3, 2, Infinity), 2 * d.normalUpper(3 / Math.SQRT2), 1e-12, 'range');
  close(d.studentizedRangeCdf(3, 4, 1e7), d.studentizedRangeCdf(3, 4, Infinity), 1e-6, 'range');
});

test('binomial tails are the sums of the terms they stand for', () => {
  const terms = [1, 5, 10, 10, 5, 1].map((ways, k) => ways * 0.3 ** k * 0.7 ** (5 - k));
  for (let k = 0; k <= 5; k += 1) {
    const sum = terms.slice(0, k + 1).reduce((total, term) => total + term, 0);
    close(d.binomialCdf(k, 5, 0.3), sum, 1e-14, `${k}`);
    assert.ok(Math.abs(d.binomialUpper(k, 5, 0.3) - (1 - sum)) < 1e-15);
  }
});

test('ln Gamma of whole numbers is the ln of factorials', () => {
  let factorial = 1;
  for (let n = 1; n <= 20; n += 1) {
    assert.ok(Math.abs(d.logGamma(n) - Math.log(factorial)) < 1e-13 * Math.max(1, Math.log(factorial)));
    factorial *= n;
  }
  close(d.logGamma(0.5), 0.5 * Math.log(Math.PI), 1e-14, 'one half');
});

test('the ends of every distribution are 0, 1 and infinity, never NaN', () => {
  assert.equal(d.normalCdf(-Infinity), 0);
  assert.equal(d.normalQuantile(0), -Infinity);
  assert.equal(d.studentQuantile(1, 3), Infinity);
  assert.equal(d.studentUpper(Infinity, 3), 0);
  assert.equal(d.chiSquaredCdf(-1, 3), 0);
  assert.equal(d.chiSquaredQuantile(1, 3), Infinity);
  assert.equal(d.fisherFCdf(Infinity, 3, 4), 1);
  assert.equal(d.betaCdf(2, 3, 4), 1);
  assert.equal(d.noncentralTCdf(Infinity, 3, 4), 1);
  assert.equal(d.noncentralTQuantile(0, 3, 4), -Infinity);
  assert.equal(d.studentizedRangeUpper(-1, 3, 4), 1);
  assert.equal(d.studentizedRangeUpper(Infinity, 3, 4), 0);
  assert.equal(d.studentizedRangeUpper(1e6, 3, 1000), 0);
  assert.equal(d.binomialCdf(-1, 3, 0.5), 0);
  assert.equal(d.binomialCdf(0, 0, 0.5), 1);
});

test('what is no probability, no degree of freedom or no number is refused', () => {
  assert.throws(() => d.normalQuantile(1.5), RangeError);
  assert.throws(() => d.normalCdf(Number.NaN), RangeError);
  assert.throws(() => d.studentCdf(1, 0), RangeError);
  assert.throws(() => d.studentUpper(Number.NaN, 3), RangeError);
  assert.throws(() => d.noncentralTCdf(1, 3, Number.NaN), RangeError);
  assert.throws(() => d.studentizedRangeCdf(1, 1, 3), RangeError);
  assert.throws(() => d.binomialCdf(1, 2.5, 0.5), RangeError);
  assert.throws(() => d.gammaCdf(1, -1), RangeError);
  assert.throws(() => d.logGamma(0), RangeError);
});

const coverage = check(statisticsChecks, 'gum-table-G2-t');
test(`coverage factors t are those of the table (${citation(coverage)})`, () => {
  const { nu, p_percent } = coverage.inputs as { nu: number[]; p_percent: number[] };
  const { values, tol } = coverage.expected.t as { values: number[]; tol: number };
  nu.forEach((degreesOfFreedom, row) => {
    p_percent.forEach((percent, column) => {
      const t = d.studentQuantile(0.5 + percent / 200, degreesOfFreedom);
      assert.ok(Math.abs(t - (values[row * p_percent.length + column] ?? Number.NaN)) <= tol);
    });
  });
});

const conformance = check(statisticsChecks, 'jcgm106-table1');
test(`normal quantiles are those of the table (${citation(conformance)})`, () => {
  const { pc } = conformance.inputs as { pc: number[] };
  const { values, tol } = conformance.expected.z as { values: number[]; tol: number };
  pc.forEach((p, index) => {
    assert.ok(Math.abs(d.normalQuantile(p) - (values[index] ?? Number.NaN)) <= tol);
  });
});
