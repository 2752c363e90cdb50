import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { summarise } from '../../src/statistics/index.ts';
import { citation, statisticsChecks } from '../reference-checks.ts';

interface Certified {
  readonly mean: { readonly value: number; readonly tol: number };
  readonly sd: { readonly value: number; readonly tol: number };
}

interface Rule {
  readonly first: number;
  readonly then_repeat: readonly [number, number];
  readonly n: number;
}

/** Constructed StRD sets are published as a rule: a first value, then two values in turn; PiDigits as a string of digits. */
function valuesOf(inputs: Readonly<Record<string, unknown>>): number[] {
  if (typeof inputs.digits === 'string') return [...inputs.digits].map(Number);
  if (Array.isArray(inputs.y)) return inputs.y.map(Number);
  const rule = inputs.rule as Rule;
  return Array.from({ length: rule.n }, (_, index) =>
    index === 0 ? rule.first : rule.then_repeat[(index - 1) % 2 === 0 ? 0 : 1],
  );
}

const certified = statisticsChecks.filter((reference) => reference.id.startsWith('strd-univariate-'));
assert.equal(certified.length, 9);

for (const reference of certified) {
  test(`${reference.id}: mean and standard deviation keep the certified digits (${citation(reference)})`, () => {
    const expected = reference.expected as unknown as Certified;
    const summary = summarise(valuesOf(reference.inputs));
    assert.ok(
      Math.abs((summary.mean ?? Number.NaN) - expected.mean.value) <= expected.mean.tol,
      `mean ${summary.mean}`,
    );
    assert.ok(Math.abs((summary.sd ?? Number.NaN) - expected.sd.value) <= expected.sd.tol, `sd ${summary.sd}`);
  });
}

test('one value has a mean and no scatter', () => {
  assert.deepEqual(summarise([31.4]), { n: 1, mean: 31.4, sd: null, cov_pct: null, least: 31.4, greatest: 31.4 });
});

test('no value has no summary', () => {
  assert.deepEqual(summarise([]), { n: 0, mean: null, sd: null, cov_pct: null, least: null, greatest: null });
});

test('equal values scatter by nothing', () => {
  assert.equal(summarise([0.1, 0.1, 0.1]).sd, 0);
});

test('a value that is not a number is refused', () => {
  assert.throws(() => summarise([1, Number.NaN]), RangeError);
});

test('the unit of the values is the unit of mean and scatter', () => {
  const forces = fc.array(fc.double({ min: 1, max: 500, noNaN: true }), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(forces, (values) => {
      const one = summarise(values);
      const thousand = summarise(values.map((value) => 1000 * value));
      assert.ok(Math.abs((thousand.mean ?? 0) - 1000 * (one.mean ?? 0)) < 1e-7);
      assert.ok(Math.abs((thousand.sd ?? 0) - 1000 * (one.sd ?? 0)) < 1e-7);
    }),
    { seed: 11, numRuns: 200 },
  );
});
