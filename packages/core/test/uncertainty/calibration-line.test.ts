import assert from 'node:assert/strict';
import { test } from 'node:test';
import { calibrationLine } from '../../src/uncertainty/index.ts';
import { check, citation, statisticsChecks } from '../reference-checks.ts';

const norris = check(statisticsChecks, 'strd-linreg-norris');

test(`strd-linreg-norris: slope, intercept and their errors keep ten certified digits (${citation(norris)})`, () => {
  const { x, y } = norris.inputs as { readonly x: number[]; readonly y: number[] };
  const line = calibrationLine({ at: x, correction: y, origin: 0 });
  assert.ok(line);
  const found = {
    b0: line.intercept,
    se_b0: line.interceptUncertainty,
    b1: line.slope,
    se_b1: line.slopeUncertainty,
    residual_sd: line.sd,
  };
  for (const [key, value] of Object.entries(found)) {
    const { value: certified } = norris.expected[key] as { readonly value: number };
    // Double precision cannot hold the fourteenth certified digit of an intercept that is a small difference of large sums.
    assert.ok(Math.abs(value / certified - 1) < 1e-10, `${key}: ${value}, certified ${certified}`);
  }
});
