import assert from 'node:assert/strict';
import { test } from 'node:test';
import { checkMachine, type PlannedRig } from '../../src/plan/index.ts';

const rig: PlannedRig = {
  instrument: 'RIG-1',
  rangeMinimum_kN: 10,
  rangeMaximum_kN: 100,
  class: 1,
  resolution_kN: 0.02,
};
const met = (change: Partial<PlannedRig>, forces = { least_kN: 25, greatest_kN: 70 }) =>
  checkMachine({ ...rig, ...change }, forces);

test('a rig that reaches, begins low enough, is of the class and resolves finely suits', () => {
  const found = met({});
  assert.equal(found.isSuited, true);
  assert.deepEqual(
    found.findings.map(({ isMet }) => isMet),
    [true, true, true, true],
  );
});

test('each demand that fails alone makes the rig unsuited, and is named', () => {
  const cases: readonly (readonly [Partial<PlannedRig>, string])[] = [
    [{ rangeMaximum_kN: 80 }, 'upper end of the range'],
    [{ rangeMinimum_kN: 30 }, 'lower end of the range'],
    [{ class: 2 }, 'class'],
    [{ resolution_kN: 0.2 }, 'resolution'],
  ];
  for (const [change, what] of cases) {
    const found = met(change);
    assert.equal(found.isSuited, false);
    assert.deepEqual(
      found.findings.filter(({ isMet }) => isMet === false).map((finding) => finding.what),
      [what],
    );
    assert.match(found.sentence, /does not suit/);
  }
});

test('what is not known leaves it open, unless something fails', () => {
  assert.equal(met({ class: null }).isSuited, null);
  assert.equal(met({ rangeMaximum_kN: null, rangeMinimum_kN: null, resolution_kN: null }).isSuited, null);
  assert.equal(met({ class: null, rangeMinimum_kN: 50 }).isSuited, false);
});

test('forces out of order, a margin below one and an unknown class are refused', () => {
  assert.throws(() => met({}, { least_kN: 70, greatest_kN: 25 }), RangeError);
  assert.throws(() => checkMachine(rig, { least_kN: 1, greatest_kN: 2, margin: 0.9 }), RangeError);
  assert.throws(() => checkMachine(rig, { least_kN: 1, greatest_kN: 2, askedClass: 5 }), RangeError);
});
