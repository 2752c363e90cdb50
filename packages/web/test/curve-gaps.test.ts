import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { brokenAtGaps } from '../src/features/rig/curve-gaps.ts';

test('no line is drawn through a gap, and no reading is lost to it', () => {
  const curve = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 2, maxLength: 40 });
  const law = fc.property(curve, fc.nat({ max: 37 }), (forces, place) => {
    const at = Math.min(place, forces.length - 2);
    const times = forces.map((_, i) => (i <= at ? i : i + 5));
    const gap = { from_s: at, to_s: at + 6 };
    const broken = brokenAtGaps(times, forces, [gap]);
    assert.deepEqual(
      broken.forces_kN.filter((force) => force !== null),
      forces,
    );
    assert.equal(broken.forces_kN[at + 1], null);
    assert.deepEqual(
      broken.times_s,
      broken.times_s.toSorted((a, b) => a - b),
    );
  });
  fc.assert(law, { seed: 7, numRuns: 100 });
});

test('a gap before the first reading or after the last one leaves the curve as it is', () => {
  const gaps = [
    { from_s: 0, to_s: 1 },
    { from_s: 8, to_s: 9 },
  ];
  assert.deepEqual(brokenAtGaps([2, 3], [1, 2], gaps), { times_s: [2, 3], forces_kN: [1, 2] });
});
