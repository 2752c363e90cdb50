import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fisherExact, fisherExactTwoByTwo } from '../../../src/statistics/agreement/index.ts';
import { check, citation, statisticsChecks } from '../../reference-checks.ts';
import { meets, meetsAll } from '../comparison/expected.ts';

type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

const tea = check(statisticsChecks, 'r-fisher-tea');
test(`r-fisher-tea: one-sided p, odds ratio and limit (${citation(tea)})`, () => {
  const table = tea.inputs.table as TwoByTwo;
  const result = fisherExactTwoByTwo(table, { alternative: 'greater' });
  meets(tea, 'p', result.p);
  meets(tea, 'odds_ratio_conditional', result.oddsRatio);
  meets(tea, 'ci_lower_95', result.lower);
  assert.equal(result.upper, null);
  meets(tea, 'p_two_sided', fisherExactTwoByTwo(table).p);
});

const convictions = check(statisticsChecks, 'r-fisher-convictions');
test(`r-fisher-convictions: both sides, two levels (${citation(convictions)})`, () => {
  const table = convictions.inputs.table as TwoByTwo;
  const two = fisherExactTwoByTwo(table);
  const less = fisherExactTwoByTwo(table, { alternative: 'less' });
  const wide = fisherExactTwoByTwo(table, { confidence: 0.99 });
  meets(convictions, 'p_two_sided', two.p);
  meets(convictions, 'p_less', less.p);
  meets(convictions, 'odds_ratio_conditional', two.oddsRatio);
  meetsAll(convictions, 'ci95', [two.lower, two.upper]);
  meetsAll(convictions, 'ci99', [wide.lower, wide.upper]);
  meets(convictions, 'ci95_upper_less', less.upper);
  meets(convictions, 'p_two_sided', fisherExact(table, { seed: 1 }).p);
});

test('a kind of break never seen on one side leaves the odds ratio without a bound', () => {
  const { oddsRatio, upper, lower, doubts } = fisherExactTwoByTwo([
    [5, 0],
    [1, 4],
  ]);
  assert.equal(oddsRatio, null);
  assert.equal(upper, null);
  assert.ok((lower ?? 0) > 1);
  assert.equal(doubts.length, 1);
  assert.equal(
    fisherExactTwoByTwo([
      [0, 5],
      [4, 1],
    ]).oddsRatio,
    0,
  );
});

test('neither turning the table nor the order of its rows changes p', () => {
  const table = [
    [5, 0, 0],
    [3, 1, 1],
    [1, 4, 0],
    [2, 2, 1],
  ];
  const turned = [0, 1, 2].map((column) => table.map((row) => row[column] ?? 0));
  const { p } = fisherExact(table, { seed: 1 });
  for (const other of [turned, [...table].reverse(), [...table, [0, 0, 0]]]) {
    assert.ok(Math.abs((fisherExact(other, { seed: 1 }).p ?? 0) - (p ?? 1)) < 1e-12);
  }
});

test('a table too large to walk is answered by seeded draws, which say so and agree with the walk', () => {
  const table = [
    [5, 0, 0],
    [3, 1, 1],
    [1, 4, 0],
    [2, 2, 1],
  ];
  const exact = fisherExact(table, { seed: 1 });
  const drawn = fisherExact(table, { seed: 1, steps: 1 });
  assert.equal(exact.exact, true);
  assert.equal(drawn.exact, false);
  assert.ok(Math.abs((drawn.p ?? 0) - (exact.p ?? 1)) < 4 * (drawn.simulationError ?? 0));
  assert.deepEqual(fisherExact(table, { seed: 1, steps: 1 }), drawn);
});

test('one kind of break, one product, or no count leaves nothing to tell apart', () => {
  for (const table of [
    [[5], [5]],
    [
      [5, 0],
      [4, 0],
    ],
    [[3, 4]],
    [
      [0, 0],
      [0, 0],
    ],
    [],
  ]) {
    const { p, doubts, sentence } = fisherExact(table, { seed: 1 });
    assert.equal(p, null);
    assert.equal(doubts.length, 1);
    assert.match(sentence, /cannot be compared/);
  }
  assert.equal(
    fisherExactTwoByTwo([
      [5, 0],
      [4, 0],
    ]).p,
    null,
  );
});

test('misuse is refused', () => {
  assert.throws(() => fisherExact([[1, 2], [3]], { seed: 1 }), RangeError);
  assert.throws(
    () =>
      fisherExactTwoByTwo([
        [1, -2],
        [3, 1],
      ]),
    RangeError,
  );
});
