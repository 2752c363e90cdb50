import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type OwnStandard, parseOwnStandard, specificationFor } from '@provinghouse/core';
import { firstOfEachName, soundStandard } from '../src/lib/standards-held.ts';

function named(id: string, value: number): OwnStandard {
  const bar = { id: 'bar', quantity: 'diameterTolerance', statement: 'bar', value, unit: 'mm', sources: [] };
  const about = { edition: '1', range: [6, 16], confidence: 'A', confidenceWhy: 'our own' };
  return parseOwnStandard({ id, title: id, ...about, rules: [bar] }, id);
}

test('of two specifications of one name the first speaks, as in the choice that judging makes', () => {
  const campaign = [named('Quay rule', 0.1)];
  const bench = [named('quay-rule', 0.4), named('Works rule', 0.8)];
  const all = firstOfEachName([...campaign, ...bench]);
  assert.deepEqual(
    all.map(({ id }) => id),
    ['Quay rule', 'Works rule'],
  );
  const judgedBy = (standard: string, own: readonly OwnStandard[]) =>
    specificationFor({ standard, size_mm: 8, own }).limits.find(({ quantity }) => quantity === 'diameter')?.upper;
  for (const name of ['quay-rule', 'Quay rule', 'works-rule'])
    assert.equal(judgedBy(name, all), judgedBy(name, [...campaign, ...bench]), name);
  assert.equal(judgedBy('quay-rule', all), 8.1);
});

test('a file that is no specification is left out, and harms no other', () => {
  assert.deepEqual(soundStandard({ id: 'nothing else' }, 'a file'), []);
  assert.deepEqual(soundStandard(null, 'a file'), []);
});
