import assert from 'node:assert/strict';
import { test } from 'node:test';
import { rowWith } from '@provinghouse/contract';
import { peopleRows } from '../src/lib/entry/people-rows.ts';

const plover = rowWith('people', { person: 'plover', name: 'Plover (invented)' });

test('whoever is not in the campaign yet is added with what they enter, once', () => {
  assert.deepEqual(peopleRows([plover], 'teal'), [{ person: 'teal', name: 'teal', role: null }]);
  assert.deepEqual(peopleRows([plover], 'plover'), []);
});

test('nobody is no person', () => {
  assert.deepEqual(peopleRows([plover], null), []);
});
