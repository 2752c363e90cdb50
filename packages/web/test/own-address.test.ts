import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ownCopy, ownStandardFrom, specificationFor } from '@provinghouse/core';
import {
  asPublished,
  draftOf,
  emptyForm,
  gradeOf,
  type OwnForm,
  ownAddress,
  shownNumber,
  withNumber,
} from '../src/features/rulebook/own-address.ts';

const base = specificationFor({ standard: 'en-818-3', size_mm: 8 });
const force = { quantity: 'breakingForce', side: 'lower' } as const;
const form: OwnForm = {
  ...emptyForm,
  from: 'en-818-3~4~8',
  name: 'Bridle rule 8',
  title: 'Bridle chain (invented)',
  edition: '2026-01',
  numbers: { 'breakingForce.lower': '44,5', 'elongation.lower': '' },
  sources: { breakingForce: 'Order 12 & drawing 3 (invented)', elongation: 'not asked' },
};

test('an address gives again the form it was written from', () => {
  for (const one of [emptyForm, form, { ...form, grade: '' }]) {
    assert.deepEqual(ownAddress.read(ownAddress.write(one)), one);
  }
});

test('an untouched form is a copy, and asks for nothing but its names', () => {
  const { draft, unread } = draftOf({ ...emptyForm, from: form.from }, base);
  assert.deepEqual(draft.limits, ownCopy(base).limits);
  assert.equal(unread.size, 0);
  assert.deepEqual(
    ownStandardFrom(base, draft).faults.map(({ at }) => at),
    ['name', 'title', 'edition'],
  );
});

test('a number with a decimal comma is read, and a blank one leaves the limit out', () => {
  const { standard, faults } = ownStandardFrom(base, draftOf(form, base).draft);
  assert.deepEqual(faults, []);
  assert.ok(standard);
  const own = specificationFor({ standard: form.name, size_mm: 8, own: [standard] });
  assert.equal(own.limits.find(({ quantity }) => quantity === 'breakingForce')?.lower, 44.5);
  assert.ok(!own.limits.some(({ quantity }) => quantity === 'elongation'));
});

test('what is no number is told at its field, and is no change of the limit', () => {
  const { unread } = draftOf({ ...form, numbers: { 'pitch.upper': '24,x' } }, base);
  assert.deepEqual([...unread], ['pitch.upper']);
});

test('typing the published number again is no change, whatever its decimal sign', () => {
  const published = shownNumber(emptyForm, force, base);
  const changed = withNumber(emptyForm, force, { text: '44', base });
  assert.equal(shownNumber(changed, force, base), '44');
  const back = withNumber(changed, force, { text: published.replace('.', ','), base });
  assert.deepEqual(back.numbers, {});
});

test('as published forgets the numbers and the source of one quantity alone', () => {
  const back = asPublished(form, 'breakingForce');
  assert.deepEqual(back.numbers, { 'elongation.lower': '' });
  assert.deepEqual(back.sources, { elongation: 'not asked' });
});

test('the form of link is left off a grade that is taken over, and kept where it was typed', () => {
  const mooring = specificationFor({ standard: 'iacs-ur-w22', grade: 'R3 stud', size_mm: 50 });
  assert.equal(gradeOf(emptyForm, mooring), 'R3');
  assert.equal(gradeOf({ ...emptyForm, grade: 'R3 stud' }, mooring), 'R3 stud');
});
