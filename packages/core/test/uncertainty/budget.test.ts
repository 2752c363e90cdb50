import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { combine } from '../../src/uncertainty/combine.ts';
import { type BudgetTerm, budget, contributionsOf, coverage } from '../../src/uncertainty/index.ts';

const term = (name: string, standardUncertainty: number, degreesOfFreedom = Infinity): BudgetTerm => ({
  name,
  standardUncertainty,
  sensitivity: 1,
  degreesOfFreedom,
  distribution: 'normal',
  source: 'trial',
});

test('no terms leave the uncertainty unstated, with the reason', () => {
  const found = budget({ terms: [], quantity: 'force' });
  assert.equal(found.combinedStandardUncertainty, null);
  assert.equal(found.expandedUncertainty, null);
  assert.match(found.sentence, /Nothing is known/);
  assert.deepEqual(contributionsOf(found), []);
});

test('a part that is not known keeps the figure from being stated, and the known lines stay', () => {
  const found = budget({ terms: [term('resolution', 0.1)], unknown: ['the rig has no class'], quantity: 'force' });
  assert.equal(found.expandedUncertainty, null);
  assert.equal(found.lines.length, 1);
  assert.match(found.sentence, /not stated: the rig has no class/);
});

test('terms that are all zero give zero, not NaN, and are not believed', () => {
  const found = budget({ terms: [term('a', 0, 3), term('b', 0)], value: 5 });
  assert.equal(found.combinedStandardUncertainty, 0);
  assert.equal(found.expandedUncertainty, 0);
  assert.equal(found.lines[0]?.share_pct, null);
  assert.equal(found.doubts.length, 1);
});

test('full negative correlation cancels without a root of less than nothing', () => {
  const correlation = [{ between: ['a', 'b'] as const, coefficient: -1 }];
  const found = budget({ terms: [term('a', 0.1), term('b', 0.1)], correlation });
  assert.equal(found.combinedStandardUncertainty, 0);
});

test('a fixed factor says what it covers when few readings stand behind it', () => {
  const found = budget({ terms: [term('scatter', 1, 4)], coverage: { factor: 2 } });
  assert.equal(found.coverageFactor, 2);
  assert.equal(found.coverageProbability, coverage({ factor: 2 }, 4).probability);
  assert.match(found.doubts.join(), /covers 88\.4 % only/);
});

test('with correlation the least degrees of freedom are taken, and said', () => {
  const correlation = [{ between: ['a', 'b'] as const, coefficient: 0.5 }];
  const found = budget({ terms: [term('a', 1, 4), term('b', 1, 9)], correlation });
  assert.equal(found.effectiveDegreesOfFreedom, 4);
  assert.equal(found.doubts.length, 1);
});

test('misuse is refused: negative uncertainty, NaN, no freedom, wrong names, impossible correlation', () => {
  assert.throws(() => budget({ terms: [term('a', -1)] }), RangeError);
  assert.throws(() => budget({ terms: [term('a', Number.NaN)] }), RangeError);
  assert.throws(() => budget({ terms: [term('a', 1, 0)] }), RangeError);
  const between = (names: readonly [string, string], coefficient: number) =>
    budget({ terms: [term('a', 1), term('b', 1)], correlation: [{ between: names, coefficient }] });
  assert.throws(() => between(['a', 'c'], 0.1), RangeError);
  assert.throws(() => between(['a', 'b'], 1.1), RangeError);
  assert.throws(() => coverage({ probability: 1 }, 5), RangeError);
  assert.throws(() => coverage({ factor: 0 }, 5), RangeError);
});

test('the effective degrees of freedom lie between the least of the parts and their sum; shares make 100 %', () => {
  const parts = fc.array(
    fc.record({ u: fc.double({ min: 0.01, max: 10, noNaN: true }), nu: fc.integer({ min: 1, max: 60 }) }),
    {
      minLength: 1,
      maxLength: 8,
    },
  );
  fc.assert(
    fc.property(parts, (list) => {
      const found = budget({ terms: list.map(({ u, nu }, index) => term(`t${index}`, u, nu)) });
      const freedom = found.effectiveDegreesOfFreedom ?? Number.NaN;
      const freedoms = list.map(({ nu }) => nu);
      assert.ok(freedom >= Math.min(...freedoms) * (1 - 1e-12));
      assert.ok(freedom <= freedoms.reduce((sum, nu) => sum + nu, 0) * (1 + 1e-12));
      assert.ok(Math.abs(found.lines.reduce((sum, line) => sum + (line.share_pct ?? 0), 0) - 100) < 1e-9);
      const joined = combine(contributionsOf(found)) ?? 0;
      assert.ok(Math.abs(joined - (found.combinedStandardUncertainty ?? 0)) < 1e-12 * joined);
    }),
    { seed: 7, numRuns: 200 },
  );
});
