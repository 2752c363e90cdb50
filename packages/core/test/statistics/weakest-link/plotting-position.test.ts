import assert from 'node:assert/strict';
import { test } from 'node:test';
import { plottingPositions, rankLine } from '../../../src/statistics/weakest-link/index.ts';
import { assertAllDigits, assertDigits, brokenAt, piecesOf, reference, titleOf } from './reference-pieces.ts';

const plot = reference('nist-weibull-plot-20');

test(titleOf(plot, 'median ranks and the line drawn through them'), () => {
  const failures = plot.inputs.failures as readonly number[]; // told in reference/README.md
  const held = Array.from({ length: 10 }, () => ({ links: 1, force_kN: 500, mode: null, isAtLeast: true }));
  const { breaks } = plottingPositions([...brokenAt(failures, 'bar'), ...held], 'bar');
  assertAllDigits(
    plot,
    'y_ln_1_over_1_minus_F',
    breaks.map((point) => point.hazardOfOneLink),
  );
  const line = rankLine(breaks, 'ordinate on force');
  assertDigits(plot, 'slope', line?.shape);
  assertDigits(plot, 'intercept', -(line?.shape ?? 0) * Math.log10(line?.scale_kN ?? 1));
});

const ranks = reference('weibull-rank-regression-5f-3s');

test(titleOf(ranks, 'suspensions adjust the ranks; regression of force on rank'), () => {
  const { breaks } = plottingPositions(piecesOf(ranks), 'bar');
  assertAllDigits(
    ranks,
    'adjusted_ranks',
    breaks.map((point) => point.adjustedRank),
  );
  const line = rankLine(breaks, 'force on ordinate');
  assertDigits(ranks, 'shape_xony', line?.shape);
  assertDigits(ranks, 'scale_xony', line?.scale_kN);
});

test('pieces of n links stand n times lower, by one link', () => {
  const one = plottingPositions(brokenAt([30, 31, 32], 'bar', 1), 'bar').breaks;
  const five = plottingPositions(brokenAt([30, 31, 32], 'bar', 5), 'bar').breaks;
  for (const [k, point] of five.entries()) {
    assert.ok(Math.abs(5 * point.hazardOfOneLink - (one[k]?.hazardOfOneLink ?? 0)) < 1e-15);
  }
});

test('pieces that differ in links are placed by the links at risk', () => {
  const pieces = [...brokenAt([30], 'weld', 5), ...brokenAt([32], 'bar', 3), ...brokenAt([33], 'weld', 2)];
  const { breaks } = plottingPositions(pieces, 'weld');
  assert.deepEqual(
    breaks.map((point) => point.hazardOfOneLink),
    [1 / 20, 1 / 10 + 1 / 4],
  );
  assert.ok(breaks.every((point) => point.adjustedRank === null));
});

test('two points at one force, or one point, bear no line', () => {
  assert.equal(rankLine(plottingPositions(brokenAt([30], 'bar'), 'bar').breaks, 'ordinate on force'), null);
  assert.equal(rankLine(plottingPositions(brokenAt([30, 30], 'bar'), 'bar').breaks, 'ordinate on force'), null);
});
