import assert from 'node:assert/strict';
import { test } from 'node:test';
import { listSpecifications, specificationFor } from '@provinghouse/core';
import { everySpecification, keyOf, lookUp } from '../src/features/rulebook/look-up.ts';
import { readKey, requestFor } from '../src/lib/specification-key.ts';

test('the key of every listed specification leads back to it', () => {
  for (const one of listSpecifications()) {
    const key = readKey(keyOf(one));
    assert.ok(key);
    assert.equal(specificationFor(requestFor(key)).title, one.specification.title);
  }
});

test('what names no specification is told, not thrown', () => {
  for (const text of [
    null,
    '',
    '~',
    'en-818-3',
    'en-818-3~4~',
    'en-818-3~4~x',
    'en-818-3~4~-8',
    'nope~4~8',
    'en-818-3~9~8',
  ]) {
    const found = lookUp(text, []);
    assert.equal(found.specification, null, `${text}`);
    assert.ok((found.fault ?? '').length > 10);
  }
});

test('a decimal comma in a size is a point', () => {
  assert.equal(readKey('grade-definition~40~8,5')?.size_mm, 8.5);
});

test('the list is worked out once for the same own specifications', () => {
  const own: readonly never[] = [];
  assert.equal(everySpecification(own), everySpecification(own));
});
