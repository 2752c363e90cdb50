import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { parseOwnStandard, rulebook, rulebookIndex, sizesFor, specificationFor } from '../../src/chain/index.ts';
import { ownStandardFaults } from '../../src/chain/own-standard.ts';
import { isInputError } from '../../src/errors.ts';
import { limitOf } from './limit-of.ts';

const worksRule = {
  id: 'Mooring bridle rule',
  title: 'Bridle chain of the co-operative (invented)',
  edition: '2026-01',
  range: [6, 16],
  confidence: 'A',
  confidenceWhy: 'our own',
  sources: { own: { kind: 'own', citation: 'Rule of the co-operative, sheet 3' } },
  rules: [
    {
      id: 'bf',
      quantity: 'breakingForceMin',
      statement: 'grade 40',
      js: '(Math.PI / 2) * d * d * 400 / 1000',
      sources: ['own'],
      crossChecked: false,
    },
    { id: 'pitch', quantity: 'pitch', statement: '3 d', js: '3 * d', sources: ['own'], crossChecked: false },
    {
      id: 'pitchTolerance',
      quantity: 'pitchUpper',
      statement: '2 %',
      js: '0.02 * p',
      sources: ['own'],
      crossChecked: false,
    },
    {
      id: 'elongation',
      quantity: 'elongationMin',
      statement: 'at least 20 %',
      value: 20,
      sources: ['own'],
      crossChecked: false,
    },
  ],
};

test('an own specification of rules alone is looked up for any size in its range, beside the published ones', () => {
  const own = [parseOwnStandard(worksRule, 'bridle.json')];
  const specification = specificationFor({ standard: 'mooring-bridle-rule', size_mm: 8.5, own });
  const defined = specificationFor({ standard: 'grade-definition', grade: '40', size_mm: 8.5 });
  assert.equal(limitOf(specification, 'breakingForce').lower, limitOf(defined, 'breakingForce').lower);
  assert.equal(limitOf(specification, 'elongation').lower, worksRule.rules[3]?.value);
  assert.equal(limitOf(specification, 'pitch').upper, 3 * 8.5 * 1.02);
  assert.match(limitOf(specification, 'pitch').provenance.citations[0]?.text ?? '', /sheet 3/);
  assert.ok(rulebookIndex(own).some(({ id, isOwn }) => id === 'mooring-bridle-rule' && isOwn));
  assert.throws(() => specificationFor({ standard: 'mooring-bridle-rule', size_mm: 20, own }), isInputError);
});

test('every published entry has the form of an own specification', () => {
  for (const entry of rulebook.standards) {
    assert.deepEqual(ownStandardFaults({ ...entry, id: `copy of ${entry.id}` }), [], entry.id);
  }
});

// Those whose rules need knowledge beyond the form (hoist types, forms of link, rules of one grade) are left out.
const plain = [
  'EN 818-2',
  'EN 818-3',
  'ISO 3075 series',
  'PAS 1061',
  'DIN 766',
  'DIN 764',
  'DIN 763',
  'ASTM A391/A391M',
];
for (const name of plain) {
  test(`a copy of ${name} under another name gives the same limits, its texts read and not run`, () => {
    const entry = rulebook.standards.find(({ id }) => id === name);
    assert.ok(entry);
    const id = `works ${name.split('/')[0]}`;
    const own = [parseOwnStandard(JSON.parse(JSON.stringify({ ...entry, id })), 'copy.json')];
    const [grade] = entry.tables.flatMap((table) => table.grade?.split(' and ') ?? []);
    for (const { size_mm, tradeSize } of sizesFor({ standard: id, grade, own })) {
      const wanted = tradeSize === null ? { size_mm } : { tradeSize };
      const copied = specificationFor({ standard: id, grade, ...wanted, own });
      const published = specificationFor({ standard: name, grade, ...wanted });
      assert.deepEqual(
        copied.limits.map((limit) => ({ ...limit, standard: name })),
        published.limits,
      );
    }
  });
}

test('all faults of a file are told at once, each with its place', () => {
  const broken = {
    id: 'EN 818-3',
    title: '',
    edition: '1',
    range: [10, 5],
    confidence: 'good',
    confidenceWhy: 'x',
    rules: [
      { id: 'a', quantity: 'strength', statement: 's', js: '3 d', sources: ['nobody'] },
      { id: 'b', quantity: 'pitch', statement: 's', sources: [] },
    ],
    tables: [
      {
        id: 't',
        key: 'd',
        columns: {
          d: { quantity: 'nominalSize', unit: 'mm' },
          bf: { quantity: 'breakingForceMin', unit: 'stone', sources: ['memory'] },
        },
        rows: [
          { d: 8, bf: '40' },
          { d: 8, width: 3 },
          { d: -1, bf: null },
        ],
      },
    ],
  };
  const places = [
    'id:',
    'title:',
    'range:',
    'confidence:',
    'rules[0].quantity:',
    'rules[0].sources:',
    'rules[0].js:',
    'rules[1]:',
    'tables[0].columns.bf.unit:',
    'tables[0].rows[0].bf:',
    'tables[0].rows[1]: d = 8 is there twice',
    'tables[0].rows[1].width:',
    'tables[0].rows[2].d:',
  ];
  assert.throws(
    () => parseOwnStandard(broken, 'broken.json'),
    (error) => {
      assert.ok(isInputError(error) && error.code === 'chain/own-standard');
      assert.ok(error.message.startsWith('broken.json'));
      for (const place of places) assert.ok(error.message.includes(place), `${place} in ${error.message}`);
      assert.deepEqual((error.context.faults as unknown[]).length, places.length);
      return true;
    },
  );
});

test('a file that is no object is refused', () => {
  for (const json of [null, [], 'text', 3]) assert.throws(() => parseOwnStandard(json, 'x.json'), isInputError);
  assert.throws(() => parseOwnStandard({ ...worksRule, rules: [], tables: [] }, 'x.json'), isInputError);
});

test('the example of the how-to is a specification as it stands', () => {
  const page = readFileSync(new URL('../../../../docs/how-to/own-specification.md', import.meta.url), 'utf8');
  const example = /```json\n([\s\S]*?)```/.exec(page)?.[1];
  assert.deepEqual(ownStandardFaults(JSON.parse(example ?? 'null')), []);
});
