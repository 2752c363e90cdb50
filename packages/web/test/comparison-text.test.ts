import assert from 'node:assert/strict';
import { test } from 'node:test';
import { comparisonAddress } from '../src/features/rulebook/comparison-address.ts';
import { changeText, sizeFreeRelation, sizeFreeText, toldChange } from '../src/features/rulebook/comparison-text.ts';
import { emptySearch, searchAddress } from '../src/features/rulebook/search-address.ts';

test('a change is told to two figures without a sign, and none is not told', () => {
  assert.equal(changeText(-20.398), '20\u00a0%');
  assert.equal(changeText(0.4975), '0.5\u00a0%');
  assert.equal(changeText(213.4), '213\u00a0%');
  for (const none of [null, 0, Number.NaN, Infinity]) assert.equal(changeText(none), null);
});

test('a change is told with higher and lower alone', () => {
  assert.equal(toldChange({ relation: 'narrower', change_pct: 5 }), null);
  assert.equal(toldChange({ relation: 'lower', change_pct: -5 }), '5\u00a0%');
});

test('freed of the size, a difference within the rounding of tables is the same', () => {
  const of = (change_pct: number) => sizeFreeRelation({ unit: 'd', first: 1, second: 1, change_pct });
  assert.deepEqual([of(0.3), of(-0.3), of(2), of(-2)], ['same', 'same', 'higher', 'lower']);
});

test('a number freed of its size carries its unit', () => {
  assert.equal(sizeFreeText(2.8, 'd'), '2.8\u00a0d');
  assert.equal(sizeFreeText(318.31, 'N/mm2'), '318\u00a0N/mm²');
});

test('the address of a search and of a comparison gives them again', () => {
  const search = { words: 'EN 818', grade: 'M', size: '3/8', quantity: 'pitch', compareWith: 'en-818-3~4~8' } as const;
  for (const one of [emptySearch, search]) assert.deepEqual(searchAddress.read(searchAddress.write(one)), one);
  assert.equal(searchAddress.read('limits=nothing').quantity, null);
  const comparison = { first: 'en-818-3~4~8', second: 'astm-a413~30~3/8in', onlyDifferences: true };
  assert.deepEqual(comparisonAddress.read(comparisonAddress.write(comparison)), comparison);
});
