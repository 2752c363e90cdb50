import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { liveCurve, thinned } from '../../src/pull/live-curve.ts';

const forces = fc.array(fc.double({ min: -5, max: 100, noNaN: true }), { minLength: 1, maxLength: 600 });
const samplesOf = (values: readonly number[]) =>
  values.map((force_kN, i) => ({ time_s: i / 100, force_kN, table_mm: null, extension_mm: null }));
const extremes = (samples: readonly { readonly force_kN: number }[]) => {
  const values = samples.map(({ force_kN }) => force_kN);
  return [Math.min(...values), Math.max(...values)];
};

test('a thinned curve keeps its lowest and highest force and its last sample, and stays short', () => {
  fc.assert(
    fc.property(forces, (values) => {
      const all = samplesOf(values);
      const few = thinned(all, 16);
      assert.ok(few.length <= 16);
      assert.deepEqual(extremes(few), extremes(all));
      assert.equal(few.at(-1), all.at(-1));
      for (const [i, sample] of few.entries()) assert.ok(i === 0 || sample.time_s >= (few[i - 1]?.time_s ?? 0));
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('the curve for those who come late stays within its bound however long it grows, and loses no extreme', () => {
  fc.assert(
    fc.property(forces, fc.integer({ min: 1, max: 70 }), (values, batch) => {
      const all = samplesOf(values);
      const curve = liveCurve(20);
      for (let i = 0; i < all.length; i += batch) curve.add(all.slice(i, i + batch));
      const points = curve.points();
      assert.ok(points.length <= 2 * 20 + 3);
      assert.deepEqual(extremes(points), extremes(all));
      assert.equal(points.at(-1), all.at(-1));
      for (const [i, sample] of points.entries()) assert.ok(i === 0 || sample.time_s >= (points[i - 1]?.time_s ?? 0));
    }),
    { seed: 7, numRuns: 200 },
  );
});
