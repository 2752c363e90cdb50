import assert from 'node:assert/strict';
import { test } from 'node:test';
import { rankEstimates, rankProbability } from '../../../src/statistics/comparison/index.ts';
import { normalCdf, studentCdf } from '../../../src/statistics/distribution/index.ts';

const near = { name: 'Ash', value: 40, standardUncertainty: 1, degreesOfFreedom: 4 };

function bestOf(result: ReturnType<typeof rankEstimates>, name: string): number {
  return result.ranked.find((entry) => entry.name === name)?.best ?? Number.NaN;
}

test('against a value known exactly the probability of being better is a Student probability', () => {
  for (const degreesOfFreedom of [1, 2, 4, 30]) {
    const fixed = { name: 'Birch', value: 39, standardUncertainty: 0, degreesOfFreedom: null };
    const result = rankEstimates([{ ...near, degreesOfFreedom }, fixed], { seed: 3, draws: 100_000 });
    const off = bestOf(result, 'Ash') - studentCdf(1, degreesOfFreedom);
    assert.ok(Math.abs(off) < 4 * result.simulationError, `${degreesOfFreedom}: ${off}`);
  }
});

test('between two means known from many values it is the normal probability of their difference', () => {
  const many = [
    { name: 'Ash', value: 40, standardUncertainty: 3, degreesOfFreedom: null },
    { name: 'Birch', value: 38, standardUncertainty: 4, degreesOfFreedom: null },
  ];
  const result = rankEstimates(many, { seed: 4, draws: 100_000 });
  assert.ok(Math.abs(bestOf(result, 'Ash') - normalCdf(2 / 5)) < 4 * result.simulationError);
});

const groups = [
  { name: 'Ash', values: [41, 42, 40.5, 41.7, 41.2] },
  { name: 'Birch', values: [41.5, 40.9, 42.2, 41.1, 41.6] },
  { name: 'Cedar', values: [39, 44, 40, 43, 41] },
];

test('each rank is held by somebody and each group holds some rank', () => {
  const { ranked } = rankProbability(groups, { seed: 9 });
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  for (const { probabilities } of ranked) assert.ok(Math.abs(sum(probabilities) - 1) < 1e-12);
  for (const rank of [0, 1, 2]) {
    assert.ok(Math.abs(sum(ranked.map((entry) => entry.probabilities[rank] ?? 0)) - 1) < 1e-12);
  }
});

test('the same seed gives the same probabilities, another seed nearly the same', () => {
  const one = rankProbability(groups, { seed: 9 });
  assert.deepEqual(rankProbability(groups, { seed: 9 }), one);
  const other = rankProbability(groups, { seed: 10 });
  for (const { name, best } of one.ranked) {
    assert.ok(Math.abs(best - bestOf(other, name)) < 6 * one.simulationError);
  }
});

test('where lower is better the ranks are turned round', () => {
  const turned = groups.map(({ name, values }) => ({ name, values: values.map((value) => -value) }));
  const up = rankProbability(groups, { seed: 9, draws: 50_000 });
  const down = rankProbability(turned, { seed: 9, draws: 50_000, higherIsBetter: false });
  for (const { name, best } of up.ranked) assert.ok(Math.abs(best - bestOf(down, name)) < 6 * up.simulationError);
});

test('two values in a group are ranked with a doubt', () => {
  const { doubts } = rankProbability([...groups, { name: 'Elder', values: [40, 41] }], { seed: 1, draws: 100 });
  assert.ok(doubts.some((doubt) => doubt.startsWith('Elder: two values')));
});

test('two means known exactly and equal share the first rank evenly', () => {
  const still = (name: string) => ({ name, value: 40, standardUncertainty: 0, degreesOfFreedom: null });
  const result = rankEstimates([still('Ash'), still('Birch')], { seed: 2 });
  assert.ok(Math.abs(bestOf(result, 'Ash') - 0.5) < 4 * result.simulationError);
});
