import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  fitWeibull,
  modeRecord,
  type PulledPiece,
  pieceSurvival,
  waldInterval,
  weibullGoodness,
} from '../../../src/statistics/weakest-link/index.ts';
import { assertAllDigits, assertDigits, isRegression, piecesOf, reference, titleOf } from './reference-pieces.ts';

/** Quantities of a fit by the keys of the checks. */
function digitsOf(pieces: readonly PulledPiece[], mode: string | null = 'bar'): Record<string, number | null> {
  const { fit } = fitWeibull(modeRecord(pieces, mode));
  assert.ok(fit?.converged);
  return {
    shape: fit.shape,
    scale: fit.scale_kN,
    loglik: fit.logLikelihood,
    se_shape: fit.shapeStandardError,
    se_scale: fit.scaleStandardError_kN,
    ad: weibullGoodness(pieces, fit)?.andersonDarling ?? null,
  };
}

/** Which quantity each key of a check holds. */
const keys: Readonly<Record<string, string>> = {
  shape: 'shape',
  scale: 'scale',
  loglik: 'loglik',
  se_shape: 'se_shape',
  se_scale: 'se_scale',
  shape_more: 'shape',
  scale_more: 'scale',
  shape_mle: 'shape',
  scale_mle: 'scale',
  weibull_shape: 'shape',
  weibull_scale: 'scale',
  weibull_loglik: 'loglik',
  ad_weibull: 'ad',
  handbook_weibull_shape: 'shape',
  handbook_weibull_scale: 'scale',
  paper_weibull_shape: 'shape',
  paper_weibull_scale: 'scale',
  paper_weibull_loglik: 'loglik',
};

const ids = [
  'nist-weibull-censored-20',
  'weibull-multiply-censored-18',
  'weibull-multiply-censored-20',
  'weibull-5f-2s-mle',
  'weibull-rank-regression-5f-3s',
  'weibull-ball-bearings-23',
  'chain-link-strength-20',
  'wire-fatigue-life-35',
  'polished-window-strength-31',
  'aluminium-fatigue-101',
  'carbon-fibre-M55-50mm',
  'glass-fibre-1.5cm',
  'carbon-fibre-stress-100',
  'tape-tensile-38-basis',
];

for (const id of ids) {
  const one = reference(id);
  const found = Object.keys(one.expected).filter((key) => key in keys);
  test(titleOf(one, `the likelihood optimum keeps the digits of ${found.length} quantities`), () => {
    assert.ok(found.length >= 2);
    const digits = digitsOf(piecesOf(one));
    for (const key of found) assertDigits(one, key, digits[keys[key] ?? '']);
  });
}

for (const [id, intervals] of [
  [
    'weibull-multiply-censored-18',
    [
      ['scale_ci95', 'scale', 'se_scale', 0.95],
      ['scale_ci90', 'scale', 'se_scale', 0.9],
    ],
  ],
  [
    'weibull-multiply-censored-20',
    [
      ['shape_ci95', 'shape', 'se_shape', 0.95],
      ['scale_ci95', 'scale', 'se_scale', 0.95],
    ],
  ],
] as const) {
  const one = reference(id);
  test(titleOf(one, 'the Wald intervals are the printed ones'), () => {
    const digits = digitsOf(piecesOf(one));
    for (const [key, value, error, confidence] of intervals) {
      const { low, high } = waldInterval(digits[value] ?? 0, digits[error] ?? 0, confidence);
      assertAllDigits(one, key, [low, high]);
    }
  });
}

const shock = reference('competing-modes-shock-absorber');
const shockPieces = (shock.inputs.distance_and_mode as readonly (readonly [number, number])[]).map(
  ([force_kN, code]) => ({
    links: 1,
    force_kN,
    mode: code === 0 ? null : `mode ${code}`,
    isAtLeast: code === 0,
  }),
); // told in reference/README.md

test(titleOf(shock, 'each mode is fitted with the other censored, and all together'), () => {
  for (const [name, mode] of [
    ['mode1', 'mode 1'],
    ['mode2', 'mode 2'],
    ['all', null],
  ] as const) {
    const digits = digitsOf(shockPieces, mode);
    for (const quantity of ['shape', 'scale', 'loglik']) assertDigits(shock, `${name}_${quantity}`, digits[quantity]);
  }
  const all = digitsOf(shockPieces, null);
  assertDigits(shock, 'all_mu', Math.log(all.scale ?? 0));
  assertDigits(shock, 'all_sigma', 1 / (all.shape ?? 0));
  assertDigits(shock, 'mode1_n', modeRecord(shockPieces, 'mode 1').breakCount);
  assertDigits(shock, 'mode2_n', modeRecord(shockPieces, 'mode 2').breakCount);
});

test(titleOf(shock, 'survival of the series of modes is the product of theirs (regression value)'), () => {
  const lawOf = (mode: string | null) => {
    const { shape, scale } = digitsOf(shockPieces, mode);
    return { mode: String(mode), shape: shape ?? 0, scale_kN: scale ?? 0 };
  };
  assert.ok(isRegression(shock, 'series_R_at_20000') && isRegression(shock, 'single_R_at_20000'));
  const at = { links: 1, force_kN: 20_000 };
  assertDigits(shock, 'series_R_at_20000', pieceSurvival([lawOf('mode 1'), lawOf('mode 2')], at));
  assertDigits(shock, 'single_R_at_20000', pieceSurvival([lawOf(null)], at));
});
