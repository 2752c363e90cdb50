import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import type { Limit } from '../../src/chain/specification.ts';
import { type DecisionRule, judge, type MeasuredValue, notJudged, standingOf } from '../../src/verdict/index.ts';
import { check, citation, coatingChecks } from '../reference-checks.ts';

function limitOf(bounds: { lower?: number; upper?: number }): Limit {
  return {
    quantity: 'breakingForce',
    unit: 'kN',
    lower: bounds.lower ?? null,
    upper: bounds.upper ?? null,
    nominal: null,
    links: null,
    statement: 'made for the test',
    standard: 'none',
    edition: '',
    place: '',
    provenance: { citations: [], crossChecked: false, flags: [], alternatives: [], note: null },
  };
}

function measuredAs(value: number, expandedUncertainty: number | null, isAtLeast = false): MeasuredValue {
  return {
    value,
    unit: 'kN',
    expandedUncertainty,
    coverageFactor: 2,
    isAtLeast,
    origin: 'made for the test',
    contributions: [],
  };
}

/** The two middle bands of the published non-binary rule are one here: the uncertainty straddles the limit. */
const words: Readonly<Record<string, string>> = {
  pass: 'conforms',
  'conditional pass': 'inconclusive',
  'conditional fail': 'inconclusive',
  fail: 'does not conform',
};

for (const id of ['GUARD-1', 'GUARD-2', 'GUARD-3', 'GUARD-4', 'GUARD-5']) {
  const reference = check(coatingChecks, id);
  test(`${id}: the guard band decides as published (${citation(reference)})`, () => {
    const { measured_kN, U95_kN, lower_limit_kN } = reference.inputs as Record<string, number>;
    const rule: DecisionRule = U95_kN === undefined ? 'simple acceptance' : 'guarded acceptance';
    const judged = judge(
      limitOf({ lower: lower_limit_kN ?? Number.NaN }),
      measuredAs(measured_kN ?? Number.NaN, U95_kN ?? null),
      rule,
    );
    assert.equal(judged.verdict, words[String(reference.expected.verdict)]);
    if (reference.expected.acceptance_limit_kN !== undefined) {
      assert.ok(Math.abs((judged.acceptance.lower ?? 0) - Number(reference.expected.acceptance_limit_kN)) < 1e-9);
    }
  });
}

const force = fc.double({ min: 1, max: 200, noNaN: true });
const uncertainty = fc.double({ min: 0, max: 5, noNaN: true });

test('what conforms under guarded acceptance conforms under simple acceptance too', () => {
  fc.assert(
    fc.property(force, force, uncertainty, (limit, value, U) => {
      const guarded = judge(limitOf({ lower: limit }), measuredAs(value, U), 'guarded acceptance').verdict;
      const simple = judge(limitOf({ lower: limit }), measuredAs(value, U), 'simple acceptance').verdict;
      if (guarded === 'conforms' || guarded === 'does not conform') assert.equal(simple, guarded);
    }),
    { seed: 5, numRuns: 500 },
  );
});

test('an upper limit is the mirror of a lower one', () => {
  fc.assert(
    fc.property(force, force, uncertainty, (limit, value, U) => {
      const below = judge(limitOf({ lower: limit }), measuredAs(value, U), 'guarded acceptance').verdict;
      const above = judge(limitOf({ upper: -limit }), measuredAs(-value, U), 'guarded acceptance').verdict;
      assert.equal(above, below);
    }),
    { seed: 6, numRuns: 300 },
  );
});

test('a value that is only "at least" never fails a requirement', () => {
  fc.assert(
    fc.property(force, force, uncertainty, (limit, value, U) => {
      const judged = judge(limitOf({ lower: limit }), measuredAs(value, U, true), 'guarded acceptance');
      assert.ok(judged.verdict === 'conforms' || judged.verdict === 'not judged');
      assert.equal(judged.verdict === 'conforms', value >= limit + U);
    }),
    { seed: 8, numRuns: 300 },
  );
});

test('an "at least" value cannot show that an upper limit is kept', () => {
  assert.equal(judge(limitOf({ upper: 50 }), measuredAs(40, 1, true), 'guarded acceptance').verdict, 'not judged');
});

test('a guarded rule without an uncertainty does not judge, and says why', () => {
  const judged = judge(limitOf({ lower: 40 }), measuredAs(50, null), 'guarded acceptance');
  assert.equal(judged.verdict, 'not judged');
  assert.match(judged.reason, /uncertainty/);
  assert.equal(judge(limitOf({ lower: 40 }), measuredAs(50, null), 'simple acceptance').verdict, 'conforms');
});

test('a nominal value without limits is not judged', () => {
  assert.match(judge(limitOf({}), measuredAs(50, 1), 'simple acceptance').reason, /nominal/);
});

test('a value never meets a limit in another unit', () => {
  assert.throws(
    () => judge(limitOf({ lower: 40 }), { ...measuredAs(50, 1), unit: 'N' }, 'simple acceptance'),
    RangeError,
  );
});

test('an uncertainty wider than half the tolerance leaves nothing to conform', () => {
  const judged = judge(limitOf({ lower: 10, upper: 12 }), measuredAs(11, 1.5), 'guarded acceptance');
  assert.equal(judged.verdict, 'inconclusive');
});

test('one failure fails the whole; doubts come before what conforms; what was not judged does not count', () => {
  assert.equal(standingOf(['conforms', 'does not conform', 'inconclusive']), 'does not conform');
  assert.equal(standingOf(['conforms', 'inconclusive', 'not judged']), 'inconclusive');
  assert.equal(standingOf(['conforms', 'not judged']), 'conforms');
  assert.equal(standingOf(['not judged']), 'not judged');
  assert.equal(standingOf([]), 'not judged');
});

test('nothing conforms as a whole while an essential part was not judged, but a failure still fails it', () => {
  assert.equal(standingOf(['conforms', 'not judged'], ['not judged']), 'not judged');
  assert.equal(standingOf(['conforms', 'does not conform'], ['not judged']), 'does not conform');
  assert.equal(standingOf(['conforms'], ['conforms']), 'conforms');
});

test('what was not judged carries its reason', () => {
  assert.equal(notJudged(limitOf({ lower: 1 }), 'simple acceptance', 'no reading').reason, 'no reading');
});
