import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import fc from 'fast-check';
import { allowedDeviation, certificateStanding, controlChart, meanRangeOfTwo } from '../../src/index.ts';
import { numbersFromR, withR } from '../referee/r.ts';

const nist = JSON.parse(readFileSync(new URL('reference/nist-individuals-chart.json', import.meta.url), 'utf8'));

const at = (day: number) => new Date(Date.UTC(2026, 0, 1 + day)).toISOString();
const chartOf = (values: readonly number[], allowed: number | null = null) =>
  controlChart(
    values.map((deviation, day) => ({ at: at(day), deviation })),
    values.map(() => allowed),
  );

test('centre and limits are those of the handbook, which rounds d2 to three places', () => {
  const { centre, meanRange, upper, lower } = chartOf(nist.readings);
  assert.ok(centre !== null && meanRange !== null && upper !== null && lower !== null);
  const four = (value: number) => Number(value.toFixed(4));
  assert.equal(four(centre), nist.mean);
  assert.equal(four(meanRange), nist.meanRange);
  const asRounded = (limit: number) => centre + ((limit - centre) * meanRangeOfTwo) / nist.d2AsRounded;
  assert.equal(four(asRounded(upper)), nist.upper);
  assert.equal(four(asRounded(lower)), nist.lower);
});

test('the mean range of two normal values is what R integrates', async () => {
  const [byR] = await withR((r) =>
    numbersFromR(r, 'integrate(function(w) w * 2 * dnorm(w, sd = sqrt(2)), 0, Inf, rel.tol = 1e-12)$value'),
  );
  assert.ok(Math.abs((byR ?? 0) - meanRangeOfTwo) < 1e-10);
});

test('limits move and stretch with the readings, and signals stay', () => {
  const values = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2, maxLength: 40 });
  fc.assert(
    fc.property(values, fc.double({ min: -5, max: 5, noNaN: true }), (given, shift) => {
      const one = chartOf(given);
      const two = chartOf(given.map((value) => 2 * value + shift));
      assert.ok(Math.abs((two.upper ?? 0) - (2 * (one.upper ?? 0) + shift)) < 1e-9);
      assert.ok(Math.abs((two.lower ?? 0) - (2 * (one.lower ?? 0) + shift)) < 1e-9);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('a later reading beyond the limits is told, and does not move them', () => {
  const steady = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 0.01 : -0.01));
  const before = chartOf(steady);
  const after = chartOf([...steady, 0.2]);
  assert.equal(after.upper, before.upper);
  assert.deepEqual(after.points.at(-1)?.signals, ['beyond the limits']);
  assert.ok(before.points.every(({ signals }) => signals.length === 0));
});

test('the eighth reading in a row on one side is told, the seventh is not', () => {
  const steady = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 0.01 : -0.01));
  const chart = chartOf([...steady, ...Array.from({ length: 8 }, () => 0.005)]);
  // The last steady reading lies below the centre, so the run begins after it.
  assert.deepEqual(chart.points.at(-2)?.signals, []);
  assert.deepEqual(chart.points.at(-1)?.signals, ['eight on one side']);
});

test('readings are charted in order of time, whatever order they are handed in', () => {
  const given = [3, 1, 2].map((day) => ({ at: at(day), deviation: day }));
  assert.deepEqual(
    controlChart(given, [null, null, null]).points.map(({ deviation }) => deviation),
    [1, 2, 3],
  );
});

test('one reading has no limits, none has no centre', () => {
  assert.deepEqual([chartOf([0.1]).upper, chartOf([0.1]).centre], [null, 0.1]);
  assert.equal(chartOf([]).centre, null);
});

test('a rig may be off by its class, anything else by its certificate and one step; without either nothing is said', () => {
  const rig = allowedDeviation({ resolution: 0.02, class: 1, expandedUncertainty: null }, 40);
  assert.equal(rig?.allowed, 0.4);
  const calliper = allowedDeviation({ resolution: 0.01, class: null, expandedUncertainty: 0.02 }, 20);
  assert.equal(calliper?.allowed, 0.03);
  assert.equal(allowedDeviation({ resolution: 0.01, class: null, expandedUncertainty: null }, 20), null);
  assert.deepEqual(chartOf([0.5], 0.4).points[0]?.signals, ['off by more than allowed']);
});

test('a certificate is in force on its first and on its last day, and has run out the day after', () => {
  const one = { calibrated_on: '2026-01-12', due_on: '2027-01-12' };
  const standing = (day: string) => certificateStanding([one], day);
  assert.equal(standing('2026-01-11').state, 'run out');
  assert.equal(standing('2026-01-12').state, 'in force');
  assert.deepEqual(standing('2027-01-12'), { state: 'due soon', certificate: one, daysLeft: 0 });
  assert.deepEqual(standing('2027-01-13'), { state: 'run out', certificate: one, daysLeft: -1 });
  assert.equal(certificateStanding([], '2026-01-01').state, 'none');
});
