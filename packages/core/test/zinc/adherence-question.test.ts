import assert from 'node:assert/strict';
import { test } from 'node:test';
import { adherenceQuestion, adherenceShares_pct, adherenceWords } from '../../src/zinc/index.ts';

test('each figure of the scale has its words and its share', () => {
  assert.equal(adherenceShares_pct.length, adherenceWords.length);
});

test('a share inside the class of its figure is not asked about, one outside is', () => {
  assert.equal(adherenceQuestion(2, 0), null);
  assert.match(adherenceQuestion(2, 4) ?? '', /nothing flaked/);
  assert.equal(adherenceQuestion(3, 6), null);
  assert.match(adherenceQuestion(3, 30) ?? '', /under 10 %/);
  assert.equal(adherenceQuestion(4, 30), null);
  assert.match(adherenceQuestion(4, 5) ?? '', /10 to 50 %/);
  assert.match(adherenceQuestion(4, 60) ?? '', /10 to 50 %/);
});

test('sheets count as grade 5 whatever their share, and a value that was not read is not asked about', () => {
  assert.equal(adherenceQuestion(5, 12), null);
  assert.equal(adherenceQuestion(null, 12), null);
  assert.equal(adherenceQuestion(3, null), null);
});
