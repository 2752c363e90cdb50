import assert from 'node:assert/strict';
import { test } from 'node:test';
import { calculationGroups, calculations, inputsThatTake, meaningOf, reckon } from '../../src/reckon/index.ts';

const fields = calculations.flatMap(({ name, inputs, outputs }) => [
  ...inputs.map(({ key, unit }) => ({ name, key, unit, side: 'input' as const })),
  ...outputs.map(({ key, unit }) => ({ name, key, unit, side: 'result' as const })),
]);

test('fields of one meaning have one unit', () => {
  const byMeaning = Map.groupBy(fields, ({ name, key, side }) => meaningOf(name, key, side));
  for (const [meaning, alike] of byMeaning) {
    assert.equal(new Set(alike.map(({ unit }) => unit)).size, 1, `${meaning}: ${JSON.stringify(alike)}`);
  }
});

test('a minimum, a measured force and the force at parting are three things', () => {
  const meanings = [
    meaningOf('working-load-limit', 'breakingForce_kN', 'input'),
    meaningOf('strength-split', 'breakingForce_kN', 'input'),
    meaningOf('parting-energy', 'force_kN', 'input'),
  ];
  assert.equal(new Set(meanings).size, meanings.length);
});

test('a class of force and a class of extension are two things, so are a grade reached and a grade claimed', () => {
  assert.notEqual(meaningOf('rig-check', 'class', 'input'), meaningOf('elongation-uncertainty', 'class', 'input'));
  assert.notEqual(meaningOf('grade-of-chain', 'grade', 'result'), meaningOf('strength-split', 'grade', 'input'));
});

test('a result goes into every input of its meaning, those first, and into no input of another unit', () => {
  for (const { name, key, unit } of fields.filter(({ side }) => side === 'result')) {
    const taking = inputsThatTake({ calculation: name, key, unit });
    const first = taking.findIndex(({ isSame }) => !isSame);
    assert.ok(taking.slice(first < 0 ? taking.length : first).every(({ isSame }) => !isSame));
    for (const { input } of taking) assert.ok([unit, 'any'].includes(input.unit) || unit === 'any', `${name} ${key}`);
  }
  const [force] = inputsThatTake({ calculation: 'grade-breaking-force', key: 'breakingForce_kN', unit: 'kN' });
  assert.deepEqual([force?.calculation.name, force?.input.key], ['working-load-limit', 'breakingForce_kN']);
});

test('every calculation stands in one subject, with its formula, and tells its doubts in sentences', () => {
  const grouped = calculationGroups.flatMap((group) => group.calculations.map(({ name }) => name));
  assert.deepEqual(
    grouped,
    calculations.map(({ name }) => name),
  );
  for (const { name, formula, example } of calculations) {
    assert.ok(formula.length > 5, name);
    for (const doubt of reckon(name, example).doubts) assert.match(doubt, /^[A-Z].*\.$/);
  }
});

test('a budget says what it leaves out', () => {
  const facts = { force_kN: 33.2, class: 1, resolution_kN: 0.02 };
  assert.match(reckon('force-uncertainty', facts).doubts.join(' '), /drift/);
  assert.doesNotMatch(reckon('force-uncertainty', { ...facts, drift_pct: 0.2 }).doubts.join(' '), /drift/);
});
