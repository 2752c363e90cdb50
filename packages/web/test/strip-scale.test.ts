import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { across, type StripRow, stripScale } from '../src/features/findings/strip-scale.ts';

type Row = Omit<StripRow, 'product'>;

/** The scale looks at forces alone; the product a row belongs to does not matter to it. */
const scaleOf = (rows: readonly Row[]) => stripScale(rows);

test('every mark, minimum and guard lies on the strip, and ticks are round', () => {
  const force = fc.double({ min: 0.5, max: 900, noNaN: true });
  fc.assert(
    fc.property(fc.array(force, { minLength: 1, maxLength: 30 }), force, (forces, minimum_kN) => {
      const dots = forces.map((force_kN) => ({ piece: 'P', force_kN, use: 'value' as const }));
      const scale = scaleOf([{ dots, minimum_kN, guard_kN: minimum_kN * 1.01 }]);
      assert.ok(scale);
      for (const one of [...forces, minimum_kN, minimum_kN * 1.01]) {
        const place = Number.parseFloat(across(scale, one));
        assert.ok(place >= 0 && place <= 100);
      }
      assert.ok(scale.ticks.length >= 2 && scale.ticks.length <= 9, String(scale.ticks));
      for (const tick of scale.ticks) assert.ok(tick >= scale.from && tick <= scale.to);
    }),
    { seed: 7, numRuns: 300 },
  );
});

test('nothing to place gives no strip', () => {
  assert.equal(scaleOf([{ dots: [], minimum_kN: null, guard_kN: null }]), null);
});
