import assert from 'node:assert/strict';
import { test } from 'node:test';
import { gammaUpper } from '../../../src/statistics/distribution/index.ts';
import { sortedQuantile } from '../../../src/statistics/weakest-link/bootstrap.ts';
import {
  type ModeRecord,
  modePosterior,
  modeRecord,
  type ShapePrior,
  tradePriors,
} from '../../../src/statistics/weakest-link/index.ts';
import { drawnLogForces, drawnShares } from '../../../src/statistics/weakest-link/joint-draws.ts';
import { brokenAt } from './reference-pieces.ts';

const prior = tradePriors.byMode.bar ?? tradePriors.otherwise;

/** Probability that ln(force / reference) of the asked hazard lies above x, by plain integration over the shape: Simpson's rule on 4001 points. */
function exactAbove(record: ModeRecord, belief: ShapePrior, x: number, logHazard: number): number {
  let all = 0;
  let above = 0;
  const r = record.breakCount;
  for (let k = 0; k <= 4000; k++) {
    const u = Math.log(belief.medianShape) + belief.logSd * (-8 + (16 * k) / 4000);
    const b = Math.exp(u);
    let exposure = 0;
    for (let i = 0; i < record.count; i++) exposure += (record.links[i] ?? 0) * Math.exp(b * (record.logForce[i] ?? 0));
    const weight =
      (k === 0 || k === 4000 ? 1 : k % 2 === 1 ? 4 : 2) *
      Math.exp(
        -0.5 * ((u - Math.log(belief.medianShape)) / belief.logSd) ** 2 +
          (r - 1) * u +
          r * b * record.meanLogBreak -
          r * Math.log(exposure),
      );
    all += weight;
    // The rate is gamma given the shape; the force lies above x when rate x e^(b x) is below the hazard asked for.
    above += weight * (1 - gammaUpper(Math.exp(logHazard - b * x) * exposure, r));
  }
  return above / all;
}

test('the lattice gives the posterior of a long-chain force that plain integration gives', () => {
  const record = modeRecord(brokenAt([33.1, 34.2, 32.5, 35.0, 33.8], 'bar', 5), 'bar');
  const posterior = modePosterior(record, { mode: 'bar', prior, place: 0, confidence: 0.9 });
  for (const links of [1, 50, 4167]) {
    const target = Math.log(-Math.log(0.95) / links);
    const forces = drawnLogForces([posterior], target).sort();
    for (const share of [0.1, 0.5, 0.9]) {
      const above = exactAbove(record, prior, sortedQuantile(forces, 1 - share), target);
      assert.ok(Math.abs(above - share) < 0.004, `${links} links: ${above}, expected ${share}`);
    }
  }
});

test('with the shape known and no break, the bound is that of a success run', () => {
  const known = { medianShape: 40, logSd: 1e-6, source: 'known' };
  const record = modeRecord(
    [1, 2, 3, 4].map(() => ({ links: 5, force_kN: 30, mode: null, isAtLeast: true })),
    'weld',
  );
  const posterior = modePosterior(record, { mode: 'weld', prior: known, place: 0, confidence: 0.9 });
  const bound = sortedQuantile(drawnLogForces([posterior], Math.log(-Math.log(0.95) / 1000)).sort(), 0.1);
  // 20 links held 30 kN, so with 90 % confidence the hazard of one link there is below -ln(0.1)/20.
  const exact = Math.log(-Math.log(0.95) / 1000 / (-Math.log(0.1) / 20)) / 40;
  assert.ok(Math.abs(bound - exact) < 1e-4, `${bound}, expected ${exact}`);
});

test('without a break the shape stays what it was held to be; many breaks make the prior small', () => {
  const held = modeRecord([{ links: 5, force_kN: 30, mode: null, isAtLeast: true }], 'weld');
  const before = modePosterior(held, { mode: 'weld', prior, place: 0, confidence: 0.9 });
  assert.ok(Math.abs(before.shapeSpreadKept - 1) < 1e-6 && Math.abs(before.shapeMedian / prior.medianShape - 1) < 1e-9);
  const forces = Array.from({ length: 200 }, (_, k) => 34 * (-Math.log(1 - (k + 0.5) / 200)) ** (1 / 30));
  const after = modePosterior(modeRecord(brokenAt(forces, 'bar'), 'bar'), {
    mode: 'bar',
    prior,
    place: 0,
    confidence: 0.9,
  });
  assert.ok(after.shapeSpreadKept < 0.12);
  assert.ok(Math.abs(after.shapeMedian / 30 - 1) < 0.05);
});

test('two modes alike share the breaks equally, and are weaker together than one', () => {
  const record = modeRecord([...brokenAt([33, 34, 35], 'bar', 5), ...brokenAt([33, 34, 35], 'weld', 5)], 'bar');
  const one = modePosterior(record, { mode: 'bar', prior, place: 0, confidence: 0.9 });
  const other = modePosterior(record, { mode: 'weld', prior, place: 1, confidence: 0.9 });
  const target = Math.log(0.05 / 100);
  const together = drawnLogForces([one, other], target);
  for (const { share } of drawnShares([one, other], together)) assert.ok(Math.abs(share - 0.5) < 0.01);
  const alone = drawnLogForces([one], target);
  assert.ok(together.every((x, k) => x < (alone[k] ?? 0)));
});

test('three modes are joined as two are', () => {
  const record = modeRecord(brokenAt([33, 34, 35], 'bar', 5), 'bar');
  const places = [0, 1, 2].map((place) =>
    modePosterior(record, { mode: `mode ${place}`, prior, place, confidence: 0.9 }),
  );
  const target = Math.log(0.05 / 100);
  const [first, second, third] = places;
  assert.ok(first && second && third);
  const forces = drawnLogForces(places, target);
  for (const k of [0, 500, 1020]) {
    const hazard = places.reduce(
      (sum, { shapes, logRates }) => sum + Math.exp((logRates[k] ?? 0) + (shapes[k] ?? 0) * (forces[k] ?? 0)),
      0,
    );
    assert.ok(Math.abs(Math.log(hazard) - target) < 1e-9);
  }
});
