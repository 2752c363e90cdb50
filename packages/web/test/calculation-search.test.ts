import assert from 'node:assert/strict';
import { test } from 'node:test';
import { calculationGroups, calculations } from '@provinghouse/core';
import { findCalculations } from '../src/features/reckoner/calculation-search.ts';
import { linkedText, resultText } from '../src/features/reckoner/result-text.ts';

const names = (words: string) => findCalculations(words).flatMap((group) => group.calculations.map(({ name }) => name));

test('without words every calculation is found, in the subjects of core', () => {
  assert.deepEqual(findCalculations('  '), calculationGroups);
});

test('every calculation is found by its own title and its own name', () => {
  for (const { name, title } of calculations) {
    assert.ok(names(title.toUpperCase()).includes(name));
    assert.ok(names(name).includes(name));
  }
});

test('all words must be spoken of; what is spoken of nowhere finds nothing', () => {
  assert.ok(names('zinc').length > 1);
  assert.ok(names('zinc mass').length < names('zinc').length);
  assert.deepEqual(names('zinc elephant'), []);
});

test('a result is shown with six significant figures, and what is no number never as one', () => {
  assert.equal(resultText(40.212385965949352), '40.2124');
  assert.equal(resultText(-0.5), '\u22120.5');
  assert.equal(resultText(0), '0');
  assert.equal(resultText(1234567), '1234570');
  assert.equal(resultText(null), 'none');
  for (const value of [Number.NaN, Infinity]) assert.doesNotMatch(resultText(value), /NaN|Infinity/);
});

test('a linked number is shortened for the eye; an entry that was typed stays as it was typed', () => {
  assert.equal(linkedText('0.527348090821299'), '0.527348');
  assert.equal(linkedText('41,2'), '41,2');
  assert.equal(linkedText(''), '');
});
