import assert from 'node:assert/strict';
import { test } from 'node:test';
import { powerToShowConformity } from '@provinghouse/core';
import fc from 'fast-check';
import { piecesToShow, reachOf } from '../src/lib/reach.ts';

const expected = { mean_kN: 44, cov_pct: 4, guard_kN: 0.5, minimum_kN: 40 };

test('more pieces show more and tell smaller differences; that all pass is less likely', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 40 }), (n) => {
      const few = reachOf(n, expected);
      const more = reachOf(n + 1, expected);
      assert.ok((more.mean ?? 0) >= (few.mean ?? 1) - 1e-12);
      assert.ok((more.share ?? 0) >= (few.share ?? 1) - 1e-12);
      assert.ok((more.held ?? 0) > (few.held ?? 1));
      assert.ok((more.told_pct ?? 99) < (few.told_pct ?? 0));
      assert.ok(more.allPass < few.allPass);
    }),
    { seed: 7, numRuns: 40 },
  );
});

test('one piece shows no mean, no share and no difference, and that is said as nothing', () => {
  const one = reachOf(1, expected);
  assert.deepEqual([one.mean, one.share, one.told_pct], [null, null, null]);
  assert.ok(Math.abs((one.held ?? 0) - 0.05) < 1e-12, 'a run of one at 95 % confidence bounds 5 %');
});

test('the chance shown is that of the plan of core', () => {
  const question = { expectedMean: 44, cov_pct: 4, limit: 40, side: 'lower', confidence: 0.95, guard: 0.5 } as const;
  assert.equal(reachOf(5, expected).mean, powerToShowConformity(5, { ...question, of: 'mean' }));
});

test('the number planned stands among those shown, once and in its place', () => {
  assert.deepEqual(piecesToShow(7).slice(0, 7), [2, 3, 4, 5, 6, 7, 8]);
  assert.equal(piecesToShow(4).length, piecesToShow(null).length);
});
