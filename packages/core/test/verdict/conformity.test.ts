import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { specificationFor } from '../../src/chain/index.ts';
import { seededRandom } from '../../src/statistics/random.ts';
import { summarise } from '../../src/statistics/summary.ts';
import {
  type ConformityRule,
  type ConformityValue,
  conformanceProbability,
  decideAllPieces,
  decideConformity,
  decideMean,
  decideToleranceBound,
  decisionBounds,
  judge,
} from '../../src/verdict/index.ts';
import { limitOf } from '../chain/limit-of.ts';
import { expectedOf, inputsOf, origin } from '../uncertainty/published-check.ts';

const least = { lower: 32, upper: null };
const value = (at: number, u: number | null = 0.3): ConformityValue => ({
  value: at,
  unit: 'kN',
  standardUncertainty: u,
  expandedUncertainty: u === null ? null : 2 * u,
});
const guarded: ConformityRule = { kind: 'guarded acceptance' };

test('guarded acceptance accepts, doubts and rejects by the expanded uncertainty', () => {
  assert.equal(decideConformity(value(32.6), least, guarded).verdict, 'conforms');
  assert.equal(decideConformity(value(32.59), least, guarded).verdict, 'inconclusive');
  assert.equal(decideConformity(value(31.41), least, guarded).verdict, 'inconclusive');
  assert.equal(decideConformity(value(31.39), least, guarded).verdict, 'does not conform');
});

test('guarded rejection rejects only beyond the guard band, and has no doubtful zone', () => {
  const rule = { kind: 'guarded rejection' } as const;
  assert.equal(decideConformity(value(31.4), least, rule).verdict, 'conforms');
  assert.equal(decideConformity(value(31.39), least, rule).verdict, 'does not conform');
});

test('at a stated risk the acceptance limit carries just that risk, on one side or two, normal or t', () => {
  const cases = fc.record({
    width: fc.option(fc.double({ min: 0.05, max: 20, noNaN: true }), { nil: null }),
    u: fc.double({ min: 0.01, max: 2, noNaN: true }),
    nu: fc.option(fc.integer({ min: 1, max: 40 }), { nil: null }),
    risk: fc.double({ min: 0.001, max: 0.4, noNaN: true }),
  });
  fc.assert(
    fc.property(cases, ({ width, u, nu, risk }) => {
      const limits = { lower: 0, upper: width };
      const known = { standardUncertainty: u, degreesOfFreedom: nu, expandedUncertainty: null };
      const bounds = decisionBounds(limits, { kind: 'stated risk', risk }, known);
      assert.ok(bounds);
      const chance = (at: number) => {
        const found = conformanceProbability({ value: at, standardUncertainty: u, degreesOfFreedom: nu }, limits);
        assert.ok(found);
        return found;
      };
      if (bounds.acceptanceGuard === null) assert.ok(chance((width ?? 0) / 2).probability < 1 - risk);
      else {
        const { below, above } = chance(bounds.acceptance.lower ?? 0);
        assert.ok(Math.abs(below + above - risk) < 1e-9, `${below + above} against ${risk}`);
      }
      if (bounds.rejectionGuard === null) assert.ok(chance((width ?? 0) / 2).probability <= risk);
      else assert.ok(Math.abs(chance(bounds.rejection.lower ?? 0).probability - risk) < 1e-9);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('limits closer than the uncertainty can tell accept nothing at a small risk, and say why', () => {
  const rule = { kind: 'stated risk', risk: 0.05 } as const;
  const found = decideConformity({ ...value(8), standardUncertainty: 1 }, { lower: 7.5, upper: 8.5 }, rule);
  assert.equal(found.verdict, 'inconclusive');
  assert.match(found.reason, /closer together than the uncertainty/);
});

test('the chances below, inside and above make one, and conformity chances rise with the value to a lower limit', () => {
  const cases = fc.record({
    at: fc.double({ min: -5, max: 5, noNaN: true }),
    u: fc.double({ min: 0.01, max: 3, noNaN: true }),
    nu: fc.option(fc.integer({ min: 1, max: 30 }), { nil: null }),
  });
  fc.assert(
    fc.property(cases, ({ at, u, nu }) => {
      const one = { value: at, standardUncertainty: u, degreesOfFreedom: nu };
      const found = conformanceProbability(one, { lower: -1, upper: 2 });
      assert.ok(found);
      assert.ok(Math.abs(found.below + found.probability + found.above - 1) < 1e-12);
      const higher = conformanceProbability({ ...one, value: at + 0.1 }, { lower: 0, upper: null });
      assert.ok(
        (higher?.probability ?? 0) >= (conformanceProbability(one, { lower: 0, upper: null })?.probability ?? 1),
      );
    }),
    { seed: 8, numRuns: 200 },
  );
});

test('the decision by w = 0 and w = U is that of judge', () => {
  const limit = limitOf(specificationFor({ standard: 'EN 818-3', size_mm: 8 }), 'breakingForce');
  assert.ok(limit.lower !== null);
  const random = seededRandom(9);
  for (let i = 0; i < 200; i++) {
    const at = limit.lower + 2 * random.normal();
    const isAtLeast = random.uniform() < 0.2;
    const measured = {
      value: at,
      unit: 'kN',
      expandedUncertainty: 0.6,
      coverageFactor: 2,
      isAtLeast,
      origin: 'trial',
      contributions: [],
    };
    for (const rule of ['simple acceptance', 'guarded acceptance'] as const) {
      const decision = decideConformity({ ...value(at), isAtLeast }, limit, { kind: rule });
      const judgement = judge(limit, measured, rule);
      assert.equal(decision.verdict, judgement.verdict);
      assert.deepEqual(decision.bounds?.acceptance, judgement.acceptance);
    }
  }
});

test('without limit, or without the uncertainty the rule needs, nothing is judged and nothing is NaN', () => {
  const open = decideConformity(value(33), { lower: null, upper: null }, guarded);
  assert.deepEqual([open.verdict, open.specificRisk], ['not judged', null]);
  assert.equal(decideConformity(value(33, null), least, guarded).verdict, 'not judged');
  assert.equal(decideConformity(value(33, null), least, { kind: 'stated risk', risk: 0.05 }).verdict, 'not judged');
  const simple = decideConformity(value(33, null), least, { kind: 'simple acceptance' });
  assert.deepEqual([simple.verdict, simple.conformance], ['conforms', null]);
  assert.match(simple.sentence, /cannot be told/);
});

test('a value without uncertainty decides by itself and is doubted', () => {
  const found = decideConformity(value(33, 0), least, guarded);
  assert.deepEqual([found.verdict, found.conformance?.probability], ['conforms', 1]);
  assert.equal(found.doubts.length, 1);
  assert.equal(conformanceProbability({ value: 0, standardUncertainty: 0 }, { lower: 0, upper: 0 })?.probability, 1);
});

test('the sentence tells value, limit, verdict, rule and the chance of being wrong', () => {
  assert.equal(
    decideConformity(value(33.204), least, guarded).sentence,
    '33.20 kN (give or take 0.60 kN) against a least value of 32 kN: conforms under guarded acceptance with a guard band of 0.6 kN. The true value meets the limit with a chance of above 99.99 %; the chance that this acceptance is wrong is below 0.01 %.',
  );
  assert.match(decideConformity(value(31), least, guarded).sentence, /this rejection is wrong is 0\.043 %/);
});

test('a value a thousand times off its limit is doubted for its unit; a limit of zero is not', () => {
  assert.match(
    decideConformity(value(33_200), least, guarded).doubts.join(),
    /1000 times the limit: see whether it is really in kN/,
  );
  assert.match(decideConformity(value(0.0332), least, guarded).doubts.join(), /see whether it is really in kN/);
  const zero = decideConformity(value(5), { lower: 0, upper: null }, guarded);
  assert.deepEqual([zero.verdict, zero.doubts.length], ['conforms', 0]);
});

test('misuse is refused: NaN, crossed limits, a risk above a half', () => {
  assert.throws(() => decideConformity(value(Number.NaN), least, guarded), RangeError);
  assert.throws(() => decideConformity(value(1), { lower: 2, upper: 1 }, guarded), RangeError);
  assert.throws(() => decideConformity(value(1), least, { kind: 'stated risk', risk: 0.6 }), RangeError);
});

test('that all pieces conform is the product when nothing is shared, and the least of them when all is', () => {
  const decisions = [32.5, 32.3, 32.8].map((at) => decideConformity(value(at), least, guarded));
  const chances = decisions.map((one) => one.conformance?.probability ?? 0);
  const apart = decideAllPieces(decisions);
  assert.ok(Math.abs((apart.probability ?? 0) - chances.reduce((product, one) => product * one, 1)) < 1e-12);
  const together = decideAllPieces(decisions, 0.3);
  assert.ok(Math.abs((together.probability ?? 0) - Math.min(...chances)) < 1e-9);
  const half = decideAllPieces(decisions, 0.2).probability ?? 0;
  assert.ok(half > (apart.probability ?? 0) && half < (together.probability ?? 0));
});

test('that all pieces conform agrees with drawing them', () => {
  const decisions = [32.5, 32.3, 32.1].map((at) => decideConformity(value(at), least, guarded));
  const random = seededRandom(10);
  const [trials, common] = [40_000, 0.2];
  const own = Math.sqrt(0.3 ** 2 - common ** 2);
  let hits = 0;
  for (let i = 0; i < trials; i++) {
    const shift = common * random.normal();
    if ([32.5, 32.3, 32.1].every((at) => at + shift + own * random.normal() >= 32)) hits++;
  }
  const p = decideAllPieces(decisions, common).probability ?? 0;
  // Five standard errors of a share of 40000.
  assert.ok(Math.abs(hits / trials - p) < 5 * Math.sqrt((p * (1 - p)) / trials));
});

test('no pieces, or none judged, are not judged', () => {
  assert.deepEqual([decideAllPieces([]).verdict, decideAllPieces([]).probability], ['not judged', null]);
  const open = decideConformity(value(33, null), least, guarded);
  assert.equal(decideAllPieces([open]).sentence, 'No piece could be judged.');
});

const sample = (values: readonly number[], common = 0.2) => ({
  values,
  unit: 'kN',
  limits: least,
  commonStandardUncertainty: common,
});

test('the mean of a few pieces is judged with their scatter and what they share', () => {
  const forces = [33.1, 33.4, 32.9, 33.3, 33.2];
  const found = decideMean(sample(forces), guarded);
  assert.equal(found.verdict, 'conforms');
  const { standardUncertainty, degreesOfFreedom } = found.value ?? assert.fail('a mean has a value');
  const scatter = (summarise(forces).sd ?? 0) / Math.sqrt(5);
  assert.ok(Math.abs((standardUncertainty ?? 0) - Math.hypot(scatter, 0.2)) < 1e-12);
  assert.ok((degreesOfFreedom ?? 0) > 4);
});

test('one piece, or none, says nothing of a mean or of a share of all pieces; equal pieces are doubted', () => {
  for (const values of [[], [33]]) {
    const mean = decideMean(sample(values), guarded);
    assert.deepEqual([mean.verdict, mean.value?.value ?? null], ['not judged', values[0] ?? null]);
    const bound = decideToleranceBound(sample(values), { share: 0.95, confidence: 0.9 });
    assert.deepEqual([bound.verdict, bound.lowerBound], ['not judged', null]);
  }
  const equal = decideToleranceBound(sample([33, 33, 33], 0), { share: 0.95, confidence: 0.9 });
  assert.deepEqual([equal.verdict, equal.lowerBound, equal.factor], ['conforms', 33, null]);
  assert.match(equal.doubts.join(), /same value/);
});

test(`tolerance-k1-table: the bound lies k times the scatter below the mean [${origin('tolerance-k1-table')}]`, () => {
  const { n } = inputsOf<{ n: number[] }>('tolerance-k1-table');
  for (const [key, plan] of [
    ['coverage0.95_confidence0.9', { share: 0.95, confidence: 0.9 }],
    ['coverage0.99_confidence0.95', { share: 0.99, confidence: 0.95 }],
  ] as const) {
    const { values = [], tol } = expectedOf('tolerance-k1-table', key);
    for (const [index, pieces] of n.entries()) {
      const drawn = Array.from({ length: pieces }, (_, i) => 33 + (i % 3));
      const found = decideToleranceBound(sample(drawn, 0), plan);
      assert.ok(Math.abs((found.factor ?? 0) - (values[index] ?? 0)) <= tol, `${key}, ${pieces}`);
    }
  }
});

test('a tolerance bound can show the share, its absence, or neither; the shared uncertainty moves it outward', () => {
  const plan = { share: 0.95, confidence: 0.9 };
  const good = decideToleranceBound(sample([36, 36.4, 35.8, 36.2, 36.1], 0), plan);
  assert.equal(good.verdict, 'conforms');
  assert.equal(decideToleranceBound(sample([32.6, 33.3, 32.2, 32.8, 33.5], 0), plan).verdict, 'inconclusive');
  assert.equal(decideToleranceBound(sample([30.2, 30.9, 29.8, 30.4, 31.1], 0), plan).verdict, 'does not conform');
  const shared = decideToleranceBound(sample([36, 36.4, 35.8, 36.2, 36.1], 0.5), plan);
  assert.ok((shared.lowerBound ?? 0) < (good.lowerBound ?? 0) - 0.5);
  assert.match(good.sentence, /With 90 % confidence, 95 % of all such pieces lie above/);
});
