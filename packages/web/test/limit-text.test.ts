import assert from 'node:assert/strict';
import { test } from 'node:test';
import { judge, specificationFor } from '@provinghouse/core';
import { acceptanceText, limitText } from '../src/lib/limit-text.ts';

const specification = specificationFor({ standard: 'EN 818-3', grade: '4', size_mm: 8 });
const breakingForce = specification.limits.find((limit) => limit.quantity === 'breakingForce');

test('a limit is set with the digits of the rulebook', () => {
  assert.ok(breakingForce);
  assert.equal(limitText(breakingForce), `at least ${breakingForce.lower}\u00a0kN`);
  assert.equal(limitText({ lower: null, upper: null, nominal: 28, unit: 'mm' }), 'nominally 28\u00a0mm');
  assert.equal(limitText({ lower: null, upper: null, nominal: null, unit: 'mm' }), 'no limit');
  assert.equal(limitText({ lower: 0.1 + 0.2, upper: 2, nominal: null, unit: 'mm' }), '0.3 to 2\u00a0mm');
});

test('an acceptance bound is set one digit finer than its uncertainty', () => {
  assert.ok(breakingForce);
  const measured = {
    value: 45,
    unit: 'kN',
    expandedUncertainty: 0.512345,
    coverageFactor: 2,
    isAtLeast: false,
    origin: '',
    contributions: [],
  };
  const guarded = judge(breakingForce, measured, 'guarded acceptance');
  assert.equal(acceptanceText(guarded), `at least ${((breakingForce.lower ?? 0) + 0.512345).toFixed(3)}\u00a0kN`);
  assert.equal(acceptanceText(judge(breakingForce, null, 'guarded acceptance')), null);
});
