import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import fc from 'fast-check';
import { blindAlphabet, blindCodes, openCodes } from '../../src/samples/index.ts';

/** A source of lots that may be as bad as it likes: whatever whole numbers come, taken round the alphabet. */
const lots = fc.infiniteStream(fc.nat()).map((stream) => (below: number) => Number(stream.next().value) % below);
const letters = fc.constantFrom(...blindAlphabet);
const names = fc.array(fc.string({ unit: letters, minLength: 1, maxLength: 5 }), { maxLength: 6 });

test('blind codes never repeat, neither among themselves nor among those ever used', () => {
  const input = fc.record({ count: fc.integer({ min: 1, max: 40 }), used: names, telling: names, draw: lots });
  fc.assert(
    fc.property(input, ({ count, used, telling, draw }) => {
      const codes = blindCodes({ count, used, telling, draw });
      assert.equal(codes.length, count);
      assert.equal(new Set([...codes, ...used]).size, codes.length + new Set(used).size);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('a blind code never holds the name of a product, a supplier or a sample, in any case of its letters', () => {
  const input = fc.record({ telling: names, draw: lots });
  fc.assert(
    fc.property(input, ({ telling, draw }) => {
      const told = telling.map((name) => name.toLowerCase());
      for (const code of blindCodes({ count: 20, used: [], telling: told, draw }))
        assert.ok(!told.some((name) => name.length > 1 && code.toLowerCase().includes(name)), code);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('a blind code is of letters and digits that are not taken for one another', () => {
  const draw = (below: number) => below - 1;
  assert.deepEqual(blindCodes({ count: 1, used: [], telling: [], draw }), ['9999']);
  assert.doesNotMatch(blindAlphabet, /[0OQ1ILUV2Z5S6G8BAE]/);
});

test('a lot that has no new code left says so and does not go on for ever', () => {
  const draw = () => 0;
  assert.throws(
    () => blindCodes({ count: 2, used: [], telling: [], draw }),
    (error) => isInputError(error) && error.code === 'entry/codes-used-up',
  );
});

test('open codes go on after the highest number the sample ever had', () => {
  const used = ['ASH-8-S1-1', 'ASH-8-S1-7', 'ASH-8-S10-9', 'ASH-8-S1-x', 'K7P'];
  assert.deepEqual(openCodes({ sample: 'ASH-8-S1', count: 2, used }), ['ASH-8-S1-8', 'ASH-8-S1-9']);
  assert.deepEqual(openCodes({ sample: 'BIRCH', count: 1, used }), ['BIRCH-1']);
});

test('cutting in two goes gives the codes that cutting at once gives', () => {
  const input = fc.record({ first: fc.integer({ min: 1, max: 30 }), later: fc.integer({ min: 1, max: 30 }) });
  fc.assert(
    fc.property(input, ({ first, later }) => {
      const before = openCodes({ sample: 'S', count: first, used: [] });
      const after = openCodes({ sample: 'S', count: later, used: before });
      assert.deepEqual([...before, ...after], openCodes({ sample: 'S', count: first + later, used: [] }));
    }),
    { seed: 7, numRuns: 100 },
  );
});
