import assert from 'node:assert/strict';
import { test } from 'node:test';
import { seededRandom, summarise } from '../../src/statistics/index.ts';

const draw = (count: number, next: () => number) => Array.from({ length: count }, next);

test('the same seed gives the same numbers, another seed others', () => {
  assert.deepEqual(draw(20, seededRandom(7).uniform), draw(20, seededRandom(7).uniform));
  assert.notDeepEqual(draw(20, seededRandom(7).uniform), draw(20, seededRandom(8).uniform));
});

test('uniform numbers fill ten bins evenly: chi-squared below its 99.99 % point', () => {
  const bins = new Array<number>(10).fill(0);
  for (const value of draw(100_000, seededRandom(1).uniform))
    bins[Math.floor(10 * value)] = (bins[Math.floor(10 * value)] ?? 0) + 1;
  const chiSquared = bins.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
  assert.ok(chiSquared < 33.72, `${chiSquared}`); // 99.99 % point of chi-squared with 9 degrees of freedom (table value)
});

test('normal numbers have mean 0, deviation 1, and one in twenty beyond 1.96', () => {
  const values = draw(100_000, seededRandom(3).normal);
  const { mean, sd } = summarise(values);
  assert.ok(Math.abs(mean ?? 1) < 0.015);
  assert.ok(Math.abs((sd ?? 0) - 1) < 0.01);
  const beyond = values.filter((value) => Math.abs(value) > 1.959964).length / values.length;
  assert.ok(Math.abs(beyond - 0.05) < 0.003);
});

test('integers stay below their bound and reach every value', () => {
  const random = seededRandom(5);
  assert.deepEqual([...new Set(draw(500, () => random.integer(6)))].sort(), [0, 1, 2, 3, 4, 5]);
});
