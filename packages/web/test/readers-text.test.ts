import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type BreakReading, readerStanding } from '@provinghouse/core';
import { readersText } from '../src/lib/readers-text.ts';

const broke = (examiner: string, link: number, position: string, mode: string): BreakReading => ({
  link,
  position,
  mode,
  examiner,
  note: null,
});

test('readers that differ are told by the words in which they do, the link where there are several', () => {
  const one = readerStanding([broke('wren', 5, 'weld', 'shear'), broke('teal', 5, 'beside weld', 'brittle')]);
  assert.equal(readersText.says(one), 'Two readers differ: weld / beside weld, shear / brittle, not settled.');
  assert.equal(readersText.counted(one), 'Counted: weld, shear, as wren read it, whose reading was kept first.');
  const two = readerStanding([
    broke('wren', 5, 'weld', 'shear'),
    broke('teal', 5, 'crown', 'shear'),
    broke('teal', 6, 'crown', 'shear'),
  ]);
  assert.equal(
    readersText.says(two),
    'Two readers differ: link 5, weld / crown, not settled. Read by one of them only: link 6.',
  );
});

test('agreement is told too, different links are no agreement, and one reader is none', () => {
  const says = (...readings: BreakReading[]) => readersText.says(readerStanding(readings));
  const first = broke('wren', 5, 'weld', 'shear');
  assert.equal(says(first, broke('teal', 5, 'weld', 'shear')), 'Two readers agree.');
  assert.equal(says(first, broke('teal', 4, 'weld', 'shear')), 'Two readers name different links: 4 / 5.');
  assert.match(says(first), /^One person has read it/);
  assert.equal(readersText.short(readerStanding([first])), null);
});

test('one reader who saw the grip is said to be enough for a lower bound', () => {
  const standing = readerStanding([broke('wren', 5, 'weld', 'shear'), broke('teal', 5, 'in grip', 'shear')]);
  assert.match(readersText.counted(standing), /one is enough for its force to count as “at least” only/);
});
