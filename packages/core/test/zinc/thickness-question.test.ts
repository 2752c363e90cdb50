import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { thicknessQuestions } from '../../src/zinc/index.ts';

const others_um = [82, 85, 88, 91, 84];

test('a reading like the others is not asked about', () => {
  fc.assert(
    fc.property(fc.integer({ min: 40, max: 200 }), (thickness_um) => {
      assert.deepEqual(thicknessQuestions({ thickness_um, others_um }), []);
    }),
    { seed: 7, numRuns: 50 },
  );
});

test('a decimal sign slipped by one place is asked about, and the value that was meant is offered', () => {
  for (const meant of others_um)
    for (const factor of [10, 0.1, 100]) {
      const [question] = thicknessQuestions({ thickness_um: Number((meant * factor).toPrecision(6)), others_um });
      assert.equal(question?.code, 'slipped-point');
      assert.equal(question?.proposal_um, meant);
    }
});

test('millimetres typed for micrometres are asked about even in the first reading', () => {
  const [question] = thicknessQuestions({ thickness_um: 0.085, others_um: [] });
  assert.equal(question?.proposal_um, 85);
});

test('next to nothing and more than a bath leaves are asked about without any other reading', () => {
  assert.equal(thicknessQuestions({ thickness_um: 0, others_um: [] })[0]?.code, 'too-thin');
  assert.equal(thicknessQuestions({ thickness_um: 0, others_um: [] })[0]?.proposal_um, null);
  assert.equal(thicknessQuestions({ thickness_um: 301, others_um })[0]?.code, 'too-thick');
  assert.deepEqual(thicknessQuestions({ thickness_um: 1, others_um: [] }), []);
  assert.deepEqual(thicknessQuestions({ thickness_um: 300, others_um: [] }), []);
});

test('a bare spot among the others does not make the rest look odd', () => {
  assert.deepEqual(thicknessQuestions({ thickness_um: 85, others_um: [0, 0, 0, 0, ...others_um] }), []);
});

test('two readings do not say what the zinc is like', () => {
  assert.deepEqual(thicknessQuestions({ thickness_um: 10, others_um: [90, 92] }), []);
});

test('what is no thickness is refused', () => {
  for (const thickness_um of [-1, Number.NaN, Number.POSITIVE_INFINITY])
    assert.throws(() => thicknessQuestions({ thickness_um, others_um }), RangeError);
});
