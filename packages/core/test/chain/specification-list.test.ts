import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  findSpecifications,
  listSpecifications,
  parseOwnStandard,
  type SpecificationSearch,
} from '../../src/chain/index.ts';
import { everyRow } from './every-row.ts';

const list = listSpecifications();
const all: SpecificationSearch = { words: '', grade: '', size: '', quantity: null };
const find = (wanted: Partial<SpecificationSearch>) => findSpecifications(list, { ...all, ...wanted });

test('every row of every table of the rulebook is in the list', () => {
  const titles = new Set(list.map(({ specification }) => specification.title));
  for (const { specification } of everyRow()) {
    // A grade without its form of link stands in the list under both forms.
    const isThere =
      titles.has(specification.title) || titles.has(specification.title.replace(/(grade \S+),/, '$1 stud,'));
    assert.ok(isThere, specification.title);
  }
});

test('every listed specification is found by its name, grade and size', () => {
  for (const one of list) {
    const size = one.tradeSize === null ? `${one.size_mm}`.replace('.', ',') : `${one.tradeSize} in`;
    const found = find({ words: one.entry.standard, grade: one.grade ?? '', size });
    assert.ok(found.includes(one), one.specification.title);
  }
});

test('a grade is found by each of its names: 4, M and 40 are one', () => {
  const titles = (grade: string) => find({ words: 'EN 818-3', grade }).map(({ specification }) => specification.title);
  assert.ok(titles('4').length > 0);
  assert.deepEqual(titles('M'), titles('4'));
  assert.deepEqual(titles('40'), titles('4'));
});

test('a quantity leaves only specifications that limit it', () => {
  const found = find({ quantity: 'bendDeflection' });
  assert.ok(found.length > 0 && found.length < list.length);
  for (const { specification } of found)
    assert.ok(specification.limits.some(({ quantity }) => quantity === 'bendDeflection'));
});

test('a size that no table lists is found where a rule covers it, and is marked so', () => {
  const found = find({ size: '9.3' });
  assert.ok(found.some(({ entry }) => entry.id === 'grade-definition'));
  assert.ok(found.some(({ entry }) => entry.id === 'en-818-7'));
  assert.ok(found.every(({ isListed, size_mm }) => !isListed && size_mm === 9.3));
  assert.ok(find({ size: '9.3', grade: '35' }).some(({ grade }) => grade === '35'));
});

test('what is no size finds nothing', () => {
  for (const size of ['eight', '8/', '-8', '8 kN']) assert.deepEqual(find({ size }), [], size);
});

test('an own specification is listed after the published ones', () => {
  const own = [
    parseOwnStandard(
      {
        id: 'Bridle rule',
        title: 'Bridle chain (invented)',
        edition: '1',
        range: [8, 8],
        confidence: 'C',
        confidenceWhy: 'invented',
        sources: { own: { kind: 'own', citation: 'invented' } },
        tables: [
          {
            id: 'limits',
            key: 'd',
            columns: {
              d: { quantity: 'nominalSize', unit: 'mm' },
              force: { quantity: 'breakingForceMin', unit: 'kN', sources: ['own'] },
            },
            rows: [{ d: 8, force: 41 }],
          },
        ],
      },
      'bridle',
    ),
  ];
  const last = listSpecifications(own).at(-1);
  assert.equal(last?.entry.isOwn, true);
  assert.equal(findSpecifications(listSpecifications(own), { ...all, words: 'bridle' }, own).length, 1);
});
