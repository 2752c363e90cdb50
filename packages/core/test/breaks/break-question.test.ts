import assert from 'node:assert/strict';
import { test } from 'node:test';
import { breakQuestions } from '../../src/breaks/index.ts';

test('a free link cannot part in the grip, a gripped one can', () => {
  assert.equal(breakQuestions({ link: 3, position: 'in grip', mode: null }).length, 1);
  assert.deepEqual(breakQuestions({ link: 0, position: 'in grip', mode: 'shear' }), []);
});

test('a weld that is not fused is asked about anywhere but at the weld', () => {
  assert.deepEqual(breakQuestions({ link: 2, position: 'weld', mode: 'weld not fused' }), []);
  assert.deepEqual(breakQuestions({ link: 2, position: 'beside weld', mode: 'weld not fused' }), []);
  assert.match(breakQuestions({ link: 2, position: 'crown', mode: 'weld not fused' })[0] ?? '', /crown/);
});

test('where too little is said nothing is asked', () => {
  assert.deepEqual(breakQuestions({ link: null, position: 'in grip', mode: null }), []);
  assert.deepEqual(breakQuestions({ link: 1, position: null, mode: 'weld not fused' }), []);
});
