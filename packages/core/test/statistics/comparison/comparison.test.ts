import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { type Comparison, compareGroups, type Group } from '../../../src/statistics/comparison/index.ts';

const ash = { name: 'Ash', values: [41.2, 41.9, 40.8, 41.5, 41.1] };
const birch = { name: 'Birch', values: [41.4, 41.0, 41.7, 40.9, 41.6] };
const cedar = { name: 'Cedar', values: [35.1, 34.6, 35.4, 34.9, 35.0] };

/** Every number inside a result, however deep. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

function compared(groups: readonly Group[]): Comparison {
  const result = compareGroups({ groups, seed: 5, draws: 2000, unit: 'kN' });
  assert.ok(numbersIn(result).every(Number.isFinite), 'every number of a comparison is finite, or null');
  return result;
}

test('close means share a letter and far ones do not', () => {
  const { groups, sentences } = compared([cedar, ash, birch]);
  assert.deepEqual(
    groups.map(({ name, letters }) => [name, letters]),
    [
      ['Birch', 'a'],
      ['Ash', 'a'],
      ['Cedar', 'b'],
    ],
  );
  assert.match(
    sentences.alike,
    /^2 of 3 pairs are told apart .*Not distinguishable from one another: Birch and Ash\.$/,
  );
});

test('a pair is told by name, difference, unit and joint limits', () => {
  const pair = compared([ash, birch, cedar]).pairs.find(({ first, second }) => first === 'Ash' && second === 'Cedar');
  assert.match(
    pair?.sentence ?? '',
    /^Ash lies above Cedar by 6\.30 kN in the mean; the data allow 5\.\d+ to \d\.\d+ kN/,
  );
});

test('equal means are not said to be equal', () => {
  const { sentences } = compared([ash, birch]);
  assert.match(sentences.overall, /does not show that they are equal/);
  assert.match(sentences.alike, /^No two of Birch and Ash are distinguishable/);
});

test('a value known only as "at least" is left out, counted and doubted', () => {
  const { groups, doubts } = compared([{ ...ash, atLeast: [43.5] }, cedar]);
  assert.equal(groups.find(({ name }) => name === 'Ash')?.n, 5);
  assert.equal(groups.find(({ name }) => name === 'Ash')?.leftOut, 1);
  assert.ok(doubts.some((doubt) => /^Ash: one value .* reaches above the mean/.test(doubt)));
});

test('a product of which every pull is censored is named, not compared', () => {
  const { empty, doubts, groups } = compared([ash, cedar, { name: 'Elder', values: [], atLeast: [30, 31] }]);
  assert.deepEqual(empty, ['Elder']);
  assert.ok(doubts.some((doubt) => doubt.startsWith('Elder: all 2 values')));
  assert.equal(groups.length, 2);
});

test('one piece is told by its value, judged by nothing and not ranked', () => {
  const { groups, pairs, order } = compared([ash, cedar, { name: 'Fir', values: [60] }]);
  assert.deepEqual(groups[0], {
    name: 'Fir',
    n: 1,
    leftOut: 0,
    mean: 60,
    sd: null,
    lower: null,
    upper: null,
    letters: '',
  });
  assert.ok(pairs.filter(({ first }) => first === 'Fir').every((pair) => pair.distinguishable === null && pair.reason));
  assert.deepEqual(order.notRanked, [{ name: 'Fir', reason: 'one value: no scatter to rank it by' }]);
  assert.match(order.sentence, /Not ranked, for want of values: Fir\.$/);
});

test('one piece lent the scatter of the others is ranked and said so', () => {
  const groups = [ash, cedar, { name: 'Fir', values: [60] }];
  const { order } = compareGroups({ groups, seed: 5, singles: 'pool' });
  assert.equal(order.ranked[0]?.name, 'Fir');
  assert.ok(order.doubts.some((doubt) => doubt.startsWith('Fir: one value, ranked as if')));
});

test('unequal scatter and few pieces are doubts', () => {
  const wild = { name: 'Damson', values: [20, 48, 25, 60, 33, 51, 22, 58] };
  const calm = { name: 'Elder', values: [40, 40.1, 40.2, 39.9, 40.05, 39.95, 40.15, 40] };
  const { doubts } = compared([wild, calm, { name: 'Fir', values: [39, 41] }]);
  assert.ok(doubts.some((doubt) => doubt.startsWith('the groups do not scatter alike')));
  assert.ok(doubts.some((doubt) => doubt.startsWith('few pieces: Fir (2)')));
});

for (const [law, groups] of [
  ['no groups', []],
  ['one group', [ash]],
  [
    'groups without values',
    [
      { name: 'Ash', values: [] },
      { name: 'Birch', values: [] },
    ],
  ],
  [
    'single values only',
    [
      { name: 'Ash', values: [1] },
      { name: 'Birch', values: [2] },
    ],
  ],
  [
    'equal values everywhere',
    [
      { name: 'Ash', values: [3, 3, 3] },
      { name: 'Birch', values: [3, 3] },
    ],
  ],
  [
    'different values without scatter',
    [
      { name: 'Ash', values: [0.1, 0.1, 0.1] },
      { name: 'Birch', values: [0.3, 0.3] },
    ],
  ],
  [
    'scatter of rounding only',
    [
      { name: 'Ash', values: [0.1 + 0.2, 0.3] },
      { name: 'Birch', values: [0.5, 0.5] },
    ],
  ],
  [
    'pairs of values',
    [
      { name: 'Ash', values: [1, 2] },
      { name: 'Birch', values: [5, 9] },
    ],
  ],
  [
    'scatter in one group only',
    [
      { name: 'Ash', values: [1, 1, 1] },
      { name: 'Birch', values: [5, 9, 4] },
    ],
  ],
  [
    'all of zero',
    [
      { name: 'Ash', values: [0, 0] },
      { name: 'Birch', values: [0, 0] },
    ],
  ],
] satisfies [string, Group[]][]) {
  test(`${law}: what can be said is said, with reasons and without NaN`, () => {
    const { sentences, welch, pairs } = compared(groups);
    assert.ok(
      Object.values(sentences).every((sentence) => sentence.length > 10 && !/NaN|null|undefined/.test(sentence)),
    );
    if (welch.p === null) assert.ok(welch.doubts.length > 0);
    assert.ok(pairs.every((pair) => pair.distinguishable !== null || pair.reason));
  });
}

test('misuse is refused', () => {
  assert.throws(() => compareGroups({ groups: [{ name: 'Ash', values: [Number.NaN] }], seed: 1 }), RangeError);
  assert.throws(() => compareGroups({ groups: [ash, ash], seed: 1 }), RangeError);
  assert.throws(() => compareGroups({ groups: [ash, cedar], seed: 1, confidence: 95 }), RangeError);
});

const campaigns = fc.array(fc.array(fc.double({ min: 10, max: 90, noNaN: true }), { minLength: 1, maxLength: 6 }), {
  minLength: 2,
  maxLength: 6,
});
const named = (lists: readonly (readonly number[])[]) => lists.map((values, index) => ({ name: `P${index}`, values }));

test('two judged groups share a letter exactly when they are not told apart', () => {
  fc.assert(
    fc.property(campaigns, (lists) => {
      const { groups, pairs } = compared(named(lists));
      const letters = new Map(groups.map((group) => [group.name, group.letters]));
      for (const { first, second, distinguishable } of pairs) {
        const [one = '', other = ''] = [letters.get(first), letters.get(second)];
        if (one === '' || other === '') continue;
        assert.equal(
          [...one].some((letter) => other.includes(letter)),
          distinguishable !== true,
        );
      }
    }),
    { seed: 7, numRuns: 60 },
  );
});

test('neither the unit nor the order of the products changes what is told apart', () => {
  fc.assert(
    fc.property(campaigns, (lists) => {
      const judged = (groups: readonly Group[]) =>
        compared(groups)
          .pairs.map(({ first, second, p }) => ({ name: [first, second].sort().join(), p }))
          .sort((a, b) => a.name.localeCompare(b.name, 'en'));
      const plain = judged(named(lists));
      const changed = judged([...named(lists.map((values) => values.map((value) => 8 * value)))].reverse());
      plain.forEach(({ name, p }, index) => {
        assert.equal(changed[index]?.name, name);
        assert.ok(Math.abs((changed[index]?.p ?? -1) - (p ?? -1)) < 1e-8, `${changed[index]?.p} ${p}`);
      });
    }),
    { seed: 8, numRuns: 40 },
  );
});
