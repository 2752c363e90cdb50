import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type BreakReading, examinersDiffer, partedInGrip, tallyBreaks } from '../../src/breaks/index.ts';

function broke(link: number, position: string, mode: string, examiner = 'first'): BreakReading {
  return { link, position, mode, examiner, note: null };
}

test('a break in the grip or in a gripped link is no break of the chain (common practice)', () => {
  assert.ok(partedInGrip([broke(3, 'in grip', 'shear')]));
  assert.ok(partedInGrip([broke(0, 'crown', 'shear')]));
  assert.ok(!partedInGrip([broke(3, 'crown', 'shear')]));
});

test('examiners differ when they read the same link differently, not when they read two links', () => {
  assert.ok(examinersDiffer([broke(3, 'weld', 'shear'), broke(3, 'beside weld', 'shear', 'second')]));
  assert.ok(!examinersDiffer([broke(3, 'weld', 'shear'), broke(4, 'crown', 'fibrous')]));
  assert.ok(!examinersDiffer([]));
});

test('each piece counts once, by its first examiner, and an unread piece not at all', () => {
  const tally = tallyBreaks([
    [broke(1, 'weld', 'weld not fused'), broke(1, 'crown', 'shear', 'second')],
    [broke(2, 'weld', 'weld not fused')],
    [broke(5, 'crown', 'shear')],
    [],
  ]);
  assert.deepEqual(tally, [
    { position: 'weld', mode: 'weld not fused', count: 2 },
    { position: 'crown', mode: 'shear', count: 1 },
  ]);
});
