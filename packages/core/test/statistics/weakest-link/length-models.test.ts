import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  chainForces,
  compareLengthModels,
  fitPooledShape,
  fitWeibull,
  modeRecord,
  pieceQuantile,
  priorFromPooledShape,
} from '../../../src/statistics/weakest-link/index.ts';
import { assertAllDigits, assertDigits, brokenAt, piecesOf, reference, titleOf } from './reference-pieces.ts';

const chain = reference('chain-of-N-links');

test(titleOf(chain, 'a chain of N links has the forces of the least of N links (regression values)'), () => {
  const { shape, scale, N } = chain.inputs as { shape: number; scale: number; N: readonly number[] }; // told in reference/README.md
  const laws = [{ mode: 'bar', shape, scale_kN: scale }];
  assertAllDigits(
    chain,
    'scale_N',
    N.map((links) => pieceQuantile(laws, links, Math.exp(-1))),
  );
  assertAllDigits(
    chain,
    'mean_N',
    N.map((links) => chainForces(laws, links)?.mean_kN ?? null),
  );
  assertAllDigits(
    chain,
    'q05_N',
    N.map((links) => pieceQuantile(laws, links, 0.95)),
  );
});

const links = reference('chain-link-strength-20');

test(titleOf(links, 'chain-of-N-links rests on the fit to these links'), () => {
  const { fit } = fitWeibull(modeRecord(piecesOf(links), 'bar'));
  const { shape, scale } = chain.inputs as { shape: number; scale: number };
  assert.ok(Math.abs((fit?.shape ?? 0) - shape) < 1e-7 && Math.abs((fit?.scale_kN ?? 0) - scale) < 1e-6);
});

const fibres = reference('carbon-fibre-gauge-lengths');
const byLength = Object.entries(
  fibres.inputs.strength_by_gauge_length_mm as Readonly<Record<string, readonly number[]>>,
); // told in reference/README.md
const fibrePieces = byLength.flatMap(([length, values]) => brokenAt(values, 'fibre', Number(length)));

for (const [length, values] of byLength) {
  test(titleOf(fibres, `fibres of ${length} mm alone`), () => {
    const { fit } = fitWeibull(modeRecord(brokenAt(values, 'fibre'), 'fibre'));
    assertDigits(fibres, `L${length}mm_shape`, fit?.shape);
    assertDigits(fibres, `L${length}mm_scale`, fit?.scale_kN);
    assertDigits(fibres, `L${length}mm_loglik`, fit?.logLikelihood);
    assertDigits(fibres, `L${length}mm_se_shape`, fit?.shapeStandardError);
    assertDigits(fibres, `L${length}mm_se_scale`, fit?.scaleStandardError_kN);
    if (length === '10' || length === '20') assertDigits(fibres, `L${length}mm_shape_published`, fit?.shape);
  });
}

test(titleOf(fibres, 'four models of strength against length, and the weakest link is rejected by the freest'), () => {
  const models = compareLengthModels(fibrePieces, 'fibre');
  assertDigits(fibres, 'M1_shape', models.weakestLink?.shape);
  assertDigits(fibres, 'M1_scale_1mm', models.weakestLink?.scale_kN);
  assertDigits(fibres, 'M1_loglik', models.weakestLink?.logLikelihood);
  assertDigits(fibres, 'M2_shape', models.powerOfLength?.shape);
  assertDigits(fibres, 'M2_scale_1mm', models.powerOfLength?.scale_kN);
  assertDigits(fibres, 'M2_length_exponent', models.powerOfLength?.exponent);
  assertDigits(fibres, 'M2_loglik', models.powerOfLength?.logLikelihood);
  assertDigits(fibres, 'M3_shape', models.freeScales?.shape);
  assertDigits(fibres, 'M3_loglik', models.freeScales?.logLikelihood);
  assertDigits(fibres, 'M4_loglik', models.freeLaws?.logLikelihood);
  assertDigits(fibres, 'LR_M1_vs_M4', models.againstFreeLaws?.ratio);
  assertDigits(fibres, 'LR_df', models.againstFreeLaws?.degrees);
  assertDigits(fibres, 'LR_p', models.againstFreeLaws?.pValue);
});

test(
  titleOf(fibres, 'the fit at 1 mm foretells the mean at 50 mm within 5 %, the fit at 50 mm that at 1 mm within 1 %'),
  () => {
    const meanAt = (length: string) => {
      const values = byLength.find(([found]) => found === length)?.[1] ?? [];
      return {
        law: fitOfFibres(values, Number(length)),
        mean: values.reduce((sum, value) => sum + value, 0) / values.length,
      };
    };
    const short = meanAt('1');
    const long = meanAt('50');
    assert.ok(Math.abs((chainForces([short.law], 50)?.mean_kN ?? 0) / long.mean - 1) < 0.05);
    assert.ok(Math.abs((chainForces([long.law], 1)?.mean_kN ?? 0) / short.mean - 1) < 0.01);
  },
);

function fitOfFibres(values: readonly number[], length: number) {
  const { fit } = fitWeibull(modeRecord(brokenAt(values, 'fibre', length), 'fibre'));
  assert.ok(fit);
  return { mode: 'fibre', shape: fit.shape, scale_kN: fit.scale_kN };
}

test('one length cannot test the weakest link', () => {
  const models = compareLengthModels(brokenAt([31, 32, 33], 'bar', 5), 'bar');
  assert.equal(models.againstPower, null);
  assert.equal(models.againstFreeLaws, null);
});

test('products that differ by a factor in force have the pooled shape of either', () => {
  const one = piecesOf(links);
  const twice = one.map((piece) => ({ ...piece, force_kN: 2 * piece.force_kN }));
  const alone = fitWeibull(modeRecord(one, 'bar')).fit;
  const pooled = fitPooledShape([modeRecord(one, 'bar'), modeRecord(twice, 'bar')]);
  assert.ok(Math.abs((pooled.shape ?? 0) / (alone?.shape ?? 1) - 1) < 1e-11);
  assert.ok(Math.abs((pooled.scales_kN[1] ?? 0) / (pooled.scales_kN[0] ?? 1) - 2) < 1e-11);
  assert.ok(Math.abs((pooled.shapeStandardError ?? 0) * Math.SQRT2 - (alone?.shapeStandardError ?? 0)) < 1e-9);
  assert.equal(priorFromPooledShape(pooled)?.medianShape, pooled.shape);
});

test('a product without a break has no scale in the pool, and a pool without a break no shape', () => {
  const held = modeRecord([{ links: 5, force_kN: 30, mode: null, isAtLeast: true }], 'bar');
  const pooled = fitPooledShape([modeRecord(piecesOf(links), 'bar'), held]);
  assert.equal(pooled.scales_kN[1], null);
  assert.equal(fitPooledShape([held]).shape, null);
  assert.equal(priorFromPooledShape(fitPooledShape([held])), null);
});
