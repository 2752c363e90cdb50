import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  chainForces,
  fitWeibull,
  modeRecord,
  type PulledPiece,
  pieceQuantile,
  pieceSurvival,
  quantileProfileInterval,
  shapeProfileInterval,
} from '../../../src/statistics/weakest-link/index.ts';

const forces = fc.array(fc.double({ min: 20, max: 60, noNaN: true }), { minLength: 3, maxLength: 20 });
const scattered = forces.filter((values) => new Set(values.map((value) => value.toFixed(2))).size > 2);
const piece = fc.record({
  links: fc.integer({ min: 1, max: 40 }),
  force_kN: fc.double({ min: 20, max: 60, noNaN: true }),
  mode: fc.constantFrom('bar', 'weld'),
  isAtLeast: fc.boolean(),
});
const campaign = fc.array(piece, { minLength: 4, maxLength: 20 });

function close(a: number | null | undefined, b: number | null | undefined, relative = 1e-9): void {
  assert.ok(Math.abs((a ?? Number.NaN) / (b ?? Number.NaN) - 1) <= relative, `${a} and ${b}`);
}

function fitOf(pieces: readonly PulledPiece[], mode: string | null = 'bar') {
  return fitWeibull(modeRecord(pieces, mode)).fit;
}

test('pieces of n links have the shape of single links and a scale n^(1/shape) higher by the link', () => {
  fc.assert(
    fc.property(scattered, fc.integer({ min: 2, max: 50 }), (values, links) => {
      const single = fitOf(values.map((force_kN) => ({ links: 1, force_kN, mode: 'bar', isAtLeast: false })));
      const long = fitOf(values.map((force_kN) => ({ links, force_kN, mode: 'bar', isAtLeast: false })));
      close(long?.shape, single?.shape);
      close(long?.scale_kN, (single?.scale_kN ?? 0) * links ** (1 / (single?.shape ?? 1)));
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('one mode alone is the plain law of all breaks', () => {
  fc.assert(
    fc.property(campaign, (pieces) => {
      const barOnly = pieces.map((one) => ({ ...one, mode: 'bar' }));
      assert.deepEqual(fitWeibull(modeRecord(barOnly, 'bar')), fitWeibull(modeRecord(barOnly, null)));
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('a break in another mode counts exactly as a pull that was stopped there', () => {
  fc.assert(
    fc.property(campaign, (pieces) => {
      const stopped = pieces.map((one) => (one.mode === 'weld' ? { ...one, mode: null, isAtLeast: true } : one));
      assert.deepEqual(fitWeibull(modeRecord(pieces, 'bar')), fitWeibull(modeRecord(stopped, 'bar')));
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('the unit of force is the unit of the scale, and nothing else changes', () => {
  fc.assert(
    fc.property(campaign, (pieces) => {
      const kN = fitOf(pieces);
      const N = fitOf(pieces.map((one) => ({ ...one, force_kN: 1000 * one.force_kN })));
      assert.equal(kN === null, N === null);
      if (!kN || kN.shape > 1e4) return;
      close(N?.shape, kN.shape, 1e-7);
      close(N?.scale_kN, 1000 * kN.scale_kN, 1e-7);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('a fit is the summit: a law a little beside it is less likely', () => {
  fc.assert(
    fc.property(scattered, (values) => {
      const pieces = values.map((force_kN) => ({ links: 3, force_kN, mode: 'bar', isAtLeast: false }));
      const record = modeRecord(pieces, 'bar');
      const { fit } = fitWeibull(record);
      assert.ok(fit);
      const interval = shapeProfileInterval(record, fit, 0.95);
      assert.ok(interval.low < fit.shape && fit.shape < (interval.high ?? 0));
      const wide = shapeProfileInterval(record, fit, 0.99);
      assert.ok(wide.low < interval.low && (wide.high ?? 0) > (interval.high ?? 0));
      const quantile = quantileProfileInterval(record, fit, { links: 500, survival: 0.95, confidence: 0.8 });
      const estimate = pieceQuantile([{ ...fit, mode: 'bar' }], 500, 0.95) ?? 0;
      assert.ok(quantile.low < estimate && estimate < (quantile.high ?? 0));
    }),
    { seed: 7, numRuns: 60 },
  );
});

const laws = [
  { mode: 'bar', shape: 40, scale_kN: 36 },
  { mode: 'weld', shape: 12, scale_kN: 48 },
];

test('survival at a quantile is the share asked for, whatever the modes', () => {
  for (const links of [1, 5, 417, 20_833]) {
    for (const survival of [0.99, 0.5, 0.01]) {
      const force_kN = pieceQuantile(laws, links, survival) ?? 0;
      close(pieceSurvival(laws, { links, force_kN }), survival, 1e-9);
    }
  }
});

test('the mean is the integral of the survival, and the shares of the modes sum to one', () => {
  for (const links of [1, 5, 4167]) {
    let sum = 0;
    const step = 0.005;
    for (let force_kN = step / 2; force_kN < 80; force_kN += step)
      sum += step * pieceSurvival(laws, { links, force_kN });
    const found = chainForces(laws, links);
    close(found?.mean_kN, sum, 1e-7);
    close(
      found?.shares.reduce((total, { share }) => total + share, 0),
      1,
      1e-12,
    );
  }
});

test('short pieces break in the bar, long chain in the weld that scatters more', () => {
  assert.equal(chainForces(laws, 5)?.shares[0]?.mode, 'bar');
  assert.equal(chainForces(laws, 4167)?.shares[0]?.mode, 'weld');
});

test('no law says nothing: every force is held and there is no quantile', () => {
  assert.equal(pieceSurvival([], { links: 5, force_kN: 30 }), 1);
  assert.equal(pieceQuantile([], 5, 0.95), null);
  assert.equal(chainForces([], 5), null);
});
