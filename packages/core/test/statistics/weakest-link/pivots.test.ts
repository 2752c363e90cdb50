import assert from 'node:assert/strict';
import { test } from 'node:test';
import { seededRandom } from '../../../src/statistics/random.ts';
import {
  bootstrapForces,
  bootstrapLowerBound,
  correctedShape,
  fitWeibull,
  modeRecord,
  unbiasingFactor,
} from '../../../src/statistics/weakest-link/index.ts';
import { shapeRoot } from '../../../src/statistics/weakest-link/shape-root.ts';
import { assertAllDigits, brokenAt, expectedList, piecesOf, reference, titleOf } from './reference-pieces.ts';

interface Pivots {
  readonly q: Float64Array;
  readonly t: Float64Array;
  /** shape x ln(estimated 10 % point / true 10 % point) x sqrt(n) */
  readonly v10: Float64Array;
  /** The same at the 1 % point. */
  readonly v01: Float64Array;
}

/** Sorted pivots of complete samples of `n` from the standard law (shape and scale 1). */
function simulate(n: number, samples: number, seed: number): Pivots {
  const random = seededRandom(seed);
  const links = new Float64Array(n).fill(1);
  const logForce = new Float64Array(n);
  const made = {
    q: new Float64Array(samples),
    t: new Float64Array(samples),
    v10: new Float64Array(samples),
    v01: new Float64Array(samples),
  };
  const hazard10 = Math.log(-Math.log(0.9));
  const hazard01 = Math.log(-Math.log(0.99));
  for (let k = 0; k < samples; k++) {
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const y = Math.log(-Math.log(1 - random.uniform()));
      logForce[i] = y;
      sum += y;
    }
    const { shape } = shapeRoot([{ logForce, links, count: n, breakCount: n, meanLogBreak: sum / n }], 1);
    let exposure = 0;
    for (let i = 0; i < n; i++) exposure += Math.exp(shape * (logForce[i] ?? 0));
    const t = Math.log(exposure / n);
    made.q[k] = shape;
    made.t[k] = t;
    made.v10[k] = Math.sqrt(n) * (t + hazard10 - shape * hazard10);
    made.v01[k] = Math.sqrt(n) * (t + hazard01 - shape * hazard01);
  }
  for (const column of Object.values(made)) column.sort();
  return made;
}

/** Quantile of sorted values, and three of its standard errors from the spacing of the values around it. */
function quantile(sorted: Float64Array, p: number): { readonly value: number; readonly slack: number } {
  const n = sorted.length;
  const at = (place: number) => sorted[Math.min(n - 1, Math.max(0, Math.round(place)))] ?? 0;
  const step = Math.sqrt(n * p * (1 - p));
  return { value: at(p * n - 0.5), slack: (3 * (at(p * n + 2 * step) - at(p * n - 2 * step))) / 4 };
}

function assertQuantile(
  sorted: Float64Array,
  p: number,
  wanted: number | undefined,
  tolerance: number,
  name: string,
): void {
  const { value, slack } = quantile(sorted, p);
  assert.ok(
    Math.abs(value - (wanted ?? Number.NaN)) <= tolerance + slack,
    `${name}: ${value}, expected ${wanted} +/- ${tolerance + slack}`,
  );
}

const factors = reference('weibull-unbiasing-factors');

test(
  titleOf(
    factors,
    'the formula for the bias of the shape gives the tabled factors, and the simulated ones within 0.001',
  ),
  () => {
    const sizes = factors.inputs.n as readonly number[]; // told in reference/README.md
    assertAllDigits(factors, 'B', sizes.map(unbiasingFactor));
    assertAllDigits(factors, 'B_simulated', sizes.map(unbiasingFactor));
  },
);

const pivots = reference('weibull-confidence-pivots');

for (const n of [5, 10, 30]) {
  test(titleOf(pivots, `n = ${n}: 5 % and 95 % points of shape and scale pivots, within simulation error`), () => {
    const index = (pivots.inputs.n as readonly number[]).indexOf(n);
    const { q, t } = simulate(n, 60_000, n);
    for (const [key, sorted, p] of [
      ['q05', q, 0.05],
      ['q95', q, 0.95],
      ['t05', t, 0.05],
      ['t95', t, 0.95],
    ] as const) {
      const { values, tol } = expectedList(pivots, key);
      assertQuantile(sorted, p, values[index], tol, `${key} at n = ${n}`);
    }
  });
}

const basis = reference('milhdbk17-weibull-VB');

test(titleOf(basis, 'n = 10 and 15: 95 % lower bounds of the 10 % and 1 % points, within simulation error'), () => {
  for (const n of [10, 15]) {
    const index = (basis.inputs.n as readonly number[]).indexOf(n);
    const { v10, v01 } = simulate(n, 60_000, 100 + n);
    for (const [key, sorted] of [
      ['V_B', v10],
      ['V_A', v01],
    ] as const) {
      const { values, tol } = expectedList(basis, key);
      assertQuantile(sorted, 0.95, values[index], tol, `${key} at n = ${n}`);
    }
  }
});

const tape = reference('tape-tensile-38-basis');

test(titleOf(tape, 'the bootstrap bound of the 10 % and 1 % points is the handbook basis value within 0.5 %'), () => {
  const record = modeRecord(piecesOf(tape), 'bar');
  const { fit } = fitWeibull(record);
  assert.ok(fit);
  const outcome = bootstrapForces({
    links: record.links,
    limits: record.links.map(() => Number.POSITIVE_INFINITY),
    shapes: Float64Array.of(fit.shape),
    logRates: Float64Array.of(fit.shape * (record.logReference - Math.log(fit.scale_kN))),
    targets: Float64Array.of(Math.log(-Math.log(0.9)), Math.log(-Math.log(0.99))),
    resamples: 20_000,
    seed: 5,
  });
  for (const [k, key] of ['weibull_B', 'weibull_A'].entries()) {
    const bound = Math.exp(record.logReference + (bootstrapLowerBound(outcome, k, 0.95) ?? 0));
    const { value } = tape.expected[key] as { value: number };
    assert.ok(Math.abs(bound / value - 1) < 0.005, `${key}: ${bound}, expected ${value}`);
  }
});

/** Mean of the corrected shape over samples of `n` of which each piece is censored with a chance of `held`, in units of the true shape. */
function meanCorrected(n: number, held: number, seed: number): number {
  const random = seededRandom(seed);
  let sum = 0;
  let made = 0;
  for (let k = 0; k < 6000; k++) {
    const pieces = Array.from({ length: n }, () => {
      const force_kN = 100 * (-Math.log(1 - random.uniform())) ** (1 / 20);
      return random.uniform() < held
        ? { links: 1, force_kN, mode: 'weld', isAtLeast: false }
        : { links: 1, force_kN, mode: 'bar', isAtLeast: false };
    });
    const record = modeRecord(pieces, 'bar');
    const { fit } = fitWeibull(record);
    const corrected = fit && correctedShape(record, fit.shape);
    if (corrected === null || record.breakCount < 3) continue;
    sum += corrected / 20;
    made++;
  }
  return sum / made;
}

test('the corrected shape is right on average: within 1 % complete, within 6 % with breaks in another mode', () => {
  assert.ok(Math.abs(meanCorrected(10, 0, 1) - 1) < 0.01);
  for (const held of [0.3, 0.5]) {
    const mean = meanCorrected(10, held, 2);
    assert.ok(Math.abs(mean - 1) < 0.06, `${held}: ${mean}`);
  }
});

test('two breaks of two pieces have no corrected shape', () => {
  assert.equal(unbiasingFactor(2), null);
  assert.equal(fitWeibull(modeRecord(brokenAt([30, 31], 'bar'), 'bar')).fit?.correctedShape, null);
});
