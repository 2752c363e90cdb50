import assert from 'node:assert/strict';
import { test } from 'node:test';
import { combine, rectangular } from '../../src/uncertainty/index.ts';

const part = (standardUncertainty: number) => ({ name: '', standardUncertainty, source: '' });

test('uncorrelated contributions add as squares (JCGM 100:2008 5.1.2)', () => {
  assert.equal(combine([part(3), part(4)]), 5);
});

test('no contribution is no uncertainty, not an uncertainty of nothing', () => {
  assert.equal(combine([]), null);
});

test('a rectangle of half width a has the standard uncertainty a over root three (JCGM 100:2008 4.3.7)', () => {
  // The variance of a uniform distribution, summed numerically over the rectangle, is the independent check.
  const steps = 100_000;
  let squares = 0;
  for (let step = 0; step < steps; step++) squares += (-1 + (2 * (step + 0.5)) / steps) ** 2;
  assert.ok(Math.abs(rectangular(1) - Math.sqrt(squares / steps)) < 1e-9);
});
