import assert from 'node:assert/strict';
import { test } from 'node:test';
import { thicknessRules } from '../../src/zinc/index.ts';

test('every rule on zinc has its words, a thickness that stands in them, and a source', () => {
  const rules = thicknessRules();
  assert.ok(rules.length > 0);
  for (const { statement, leastMean_um, sources } of rules) {
    assert.match(statement, new RegExp(`\\b${leastMean_um} um\\b`));
    assert.ok(sources.length > 0);
  }
});
