import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { countsTyped, countTyped, parsePlan, placesOf, usualPlan } from '../src/features/gauging/gauging-plan.ts';

test('a plan outlives its keeping, and anything else that was kept is the usual plan', () => {
  const plan = {
    quantities: ['diameter', 'pitch'],
    linksToGauge: 3,
    withCrown: true,
    linksReadAgain: 1,
    lengthsOver: [5, 11],
  } as const;
  assert.deepEqual(parsePlan(JSON.stringify(plan)), plan);
  for (const broken of ['', '7', 'null', '{"linksToGauge":-1,"linksReadAgain":"x","quantities":7}'])
    assert.deepEqual(parsePlan(broken), usualPlan);
});

test('a plan that asks for more links than a piece has asks for those it has', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 40 }), (links, linksToGauge) => {
      const plan = { ...usualPlan, linksToGauge, linksReadAgain: 40, lengthsOver: [linksToGauge] };
      const places = placesOf({ ...plan, quantities: ['pitch', 'lengthOverLinks'] }, { links, limits: [] });
      const gauged = new Set(places.flatMap(({ link }) => link ?? []));
      assert.equal(gauged.size, Math.min(links, linksToGauge));
      assert.ok(places.every(({ overLinks }) => overLinks === null || overLinks <= links));
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('counts are whole numbers from 1; an empty field is no count and no fault', () => {
  assert.deepEqual([' 3 ', '', '0', '-1', '2.5', 'all'].map(countTyped), [3, null, ...Array(4).fill(undefined)]);
  assert.deepEqual(countsTyped('5, 11  12'), [5, 11, 12]);
  assert.deepEqual([countsTyped(' '), countsTyped('5 x')], [null, undefined]);
});
