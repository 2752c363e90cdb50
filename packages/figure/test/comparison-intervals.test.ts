import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import {
  type ComparedInterval,
  comparisonExtent,
  comparisonIntervals,
  comparisonIntervalsTable,
} from '../src/index.ts';
import { demoIntervals } from './demo.ts';
import { formsOf, settingOf, wordsOf } from './paper.ts';

const pair = (lower: number | null, upper: number | null, distinguishable: boolean | null): ComparedInterval => ({
  first: 'A',
  second: 'B',
  difference: lower === null || upper === null ? 1 : (lower + upper) / 2,
  lower,
  upper,
  distinguishable,
  reason: lower === null ? 'B has one value only' : null,
});

const drawn = (...pairs: readonly ComparedInterval[]) =>
  comparisonIntervals({ quantity: 'breaking force', unit: 'kN', confidence: 0.95, pairs }, settingOf());

describe('the intervals of a comparison', () => {
  test('whose interval holds zero are called not distinguishable in words', () => {
    assert.ok(wordsOf(drawn(pair(-1, 2, false))).includes('not distinguishable'));
  });

  test('that are told apart name the higher one', () => {
    assert.ok(wordsOf(drawn(pair(1, 2, true))).includes('A is higher'));
    assert.ok(wordsOf(drawn(pair(-2, -1, true))).includes('B is higher'));
  });

  test('that cannot be judged have words and no interval', () => {
    const svg = drawn(pair(null, null, null));
    assert.ok(wordsOf(svg).includes('cannot be judged'));
    const row = comparisonIntervalsTable({ ...demoIntervals(), pairs: [pair(null, null, null)] }).rows[0];
    assert.deepEqual(row?.slice(2), [1, null, null, 'cannot be judged: B has one value only']);
  });

  test('always have the line of no difference in sight', () => {
    const { low, high } = comparisonExtent([pair(20, 22, true)]);
    assert.ok(low < 0 && high > 22);
  });

  test('far wider than the others are cut, with an arrow at the cut', () => {
    const pairs = [pair(-1, 1, false), pair(0, 2, false), pair(-300, 300, false)];
    const { low, high } = comparisonExtent(pairs);
    assert.ok(low > -10 && high < 10);
    assert.equal(formsOf(drawn(...pairs)).filter((form) => form === 'M#,#L#,#L#,#').length, 2);
  });

  test('of the demonstration call the two products with close means not distinguishable', () => {
    const rows = comparisonIntervalsTable(demoIntervals()).rows;
    const close = rows.find((row) => row[0] === 'ASH-8' && row[1] === 'BIRCH-8');
    assert.equal(close?.at(-1), 'not distinguishable');
  });
});
