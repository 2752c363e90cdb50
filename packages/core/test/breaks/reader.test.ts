import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  type BreakReading,
  examinersDiffer,
  partedInGrip,
  readerStanding,
  tallyBreaks,
} from '../../src/breaks/index.ts';

function broke(link: number, position: string, mode: string, examiner = 'first'): BreakReading {
  return { link, position, mode, examiner, note: null };
}

test('readers of one link differ by the words in which they do, and the first reading counts', () => {
  const readings = [broke(3, 'weld', 'shear'), broke(3, 'beside weld', 'shear', 'second')];
  const found = readerStanding(readings);
  assert.equal(found.state, 'differ');
  assert.deepEqual(found.readers, ['first', 'second']);
  assert.deepEqual(found.disputed, [{ link: 3, positions: ['weld', 'beside weld'], modes: ['shear'] }]);
  assert.equal(found.counted, readings[0]);
  assert.equal(found.isGripInDispute, false);
});

test('two readers of two links are not compared, and said to be apart; a link read by one of them stays told', () => {
  assert.equal(readerStanding([broke(3, 'weld', 'shear'), broke(4, 'weld', 'shear', 'second')]).state, 'apart');
  const both = readerStanding([
    broke(3, 'weld', 'shear'),
    broke(4, 'crown', 'shear'),
    broke(3, 'weld', 'shear', 'second'),
  ]);
  assert.deepEqual([both.state, both.readOnce], ['agree', [4]]);
});

test('one reader is no comparison, however many links were read; nothing read is nothing', () => {
  const one = readerStanding([broke(3, 'weld', 'shear'), broke(4, 'crown', 'shear')]);
  assert.deepEqual([one.state, one.readOnce], ['one reader', []]);
  assert.deepEqual([readerStanding([]).state, readerStanding([]).counted], ['unread', null]);
});

const readings = fc.uniqueArray(
  fc.record({
    link: fc.integer({ min: 0, max: 2 }),
    position: fc.constantFrom('weld', 'crown', 'in grip'),
    mode: fc.constantFrom('shear', 'brittle'),
    examiner: fc.constantFrom('first', 'second', 'third'),
    note: fc.constant(null),
  }),
  { selector: ({ link, examiner }) => `${link} ${examiner}` },
);

test('what is said of the readers is what judging asks: who differs, which reading counts, and whether the grip is in doubt', () => {
  fc.assert(
    fc.property(readings, (breaks) => {
      const found = readerStanding(breaks);
      assert.equal(found.state === 'differ', examinersDiffer(breaks));
      assert.equal(found.disputed.length > 0, examinersDiffer(breaks));
      const [tally] = tallyBreaks([breaks]);
      assert.equal(found.counted?.position, tally?.position);
      assert.equal(found.counted?.mode, tally?.mode);
      const sayers = found.readers.filter((reader) => partedInGrip(breaks.filter((one) => one.examiner === reader)));
      assert.equal(found.isGripInDispute, sayers.length > 0 && sayers.length < found.readers.length);
      if (found.isGripInDispute) assert.ok(partedInGrip(breaks));
    }),
    { seed: 7, numRuns: 500 },
  );
});
