import assert from 'node:assert/strict';
import { test } from 'node:test';
import { inputText, plannedFigure, unbroken } from '../src/features/brief/planned-text.ts';

const shown = (share: number) => {
  const { bound, value, unit } = plannedFigure(share, 'share');
  return `${bound}${value} ${unit}`;
};

test('a chance is never rounded to a certainty', () => {
  assert.equal(shown(0.9999999), '> 99.9 %');
  assert.equal(shown(1e-9), '< 0.1 %');
  assert.equal(shown(0.999), '99.9 %');
  assert.equal(shown(0.5492802716530589), '54.9 %');
});

test('an input is shown as it was put in, a share in per cent', () => {
  assert.equal(inputText(0.95, 'share'), '95\u00a0%');
  assert.equal(inputText(0.5106085780713051, 'kN'), '0.5106086\u00a0kN');
  assert.equal(inputText(5, ''), '5');
});

test('a number is not parted from its unit, nor a word from the next', () => {
  assert.equal(unbroken('9.4 % of 5 pieces at 40.2 kN, 8 mm'), '9.4\u00a0% of 5 pieces at 40.2\u00a0kN, 8\u00a0mm');
  assert.equal(unbroken('2 means'), '2 means');
});
