import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import fc from 'fast-check';
import { roundByUncertainty } from '../../src/uncertainty/rounding.ts';

interface Case {
  readonly clause: string;
  readonly value: number;
  readonly uncertainty: number;
  readonly printed: { readonly value: string; readonly uncertainty: string };
}

const reference: { readonly cases: readonly Case[] } = JSON.parse(
  readFileSync(new URL('../reference/jcgm-100-rounding.json', import.meta.url), 'utf8'),
);

const places = (text: string): number => (text.includes('.') ? text.length - text.indexOf('.') - 1 : 0);

describe('rounding by uncertainty', () => {
  for (const { clause, printed, ...result } of reference.cases) {
    test(`a result is printed as JCGM 100 prints it: ${clause}`, () => {
      assert.deepEqual(roundByUncertainty(result), printed);
    });
  }

  test('value and uncertainty end at the same place, half a unit from what was measured at most', () => {
    const result = fc.record({
      value: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      uncertainty: fc.double({ min: 1e-6, max: 1e5, noNaN: true }),
    });
    fc.assert(
      fc.property(result, ({ value, uncertainty }) => {
        const rounded = roundByUncertainty({ value, uncertainty });
        assert.equal(places(rounded.value), places(rounded.uncertainty));
        const unit = 10 ** (Math.floor(Math.log10(Number(rounded.uncertainty)) + 1e-9) - 1);
        // 1e-9 relative: the decimal read back is itself a rounded double.
        const slack = 1e-9 * Math.max(Math.abs(value), uncertainty);
        assert.ok(Math.abs(Number(rounded.uncertainty) - uncertainty) <= unit / 2 + slack);
        assert.ok(Math.abs(Number(rounded.value) - value) <= unit / 2 + slack);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });

  test('an uncertainty keeps two significant digits, carried over or not', () => {
    const significant = (uncertainty: number) =>
      roundByUncertainty({ value: 0, uncertainty }).uncertainty.replace('.', '').replace(/^0+/, '');
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.99, noNaN: true }), (uncertainty) => {
        assert.equal(significant(uncertainty).length, 2);
      }),
      { seed: 7, numRuns: 2000 },
    );
    assert.equal(roundByUncertainty({ value: 3, uncertainty: 0.996 }).uncertainty, '1.0');
  });

  const edges = [
    { law: 'above ten units the last digits are zeros', value: 12345, uncertainty: 1234, printed: ['12300', '1200'] },
    {
      law: 'a value far below its uncertainty is zero without a sign',
      value: -0.001,
      uncertainty: 5,
      printed: ['0.0', '5.0'],
    },
    { law: 'half of a coarse unit rounds up', value: 50, uncertainty: 1000, printed: ['100', '1000'] },
    { law: 'just under half of a coarse unit rounds down', value: 49.999, uncertainty: 1000, printed: ['0', '1000'] },
    { law: 'a negative value keeps its sign', value: -33.126, uncertainty: 0.2, printed: ['-33.13', '0.20'] },
    {
      law: 'a whole-number uncertainty of two digits needs no point',
      value: 812.4,
      uncertainty: 14.2,
      printed: ['812', '14'],
    },
    {
      law: 'a huge value keeps its places',
      value: 1e21,
      uncertainty: 0.11,
      printed: ['1000000000000000000000.00', '0.11'],
    },
    { law: 'a value below all places is zero', value: 5e-324, uncertainty: 1e-3, printed: ['0.0000', '0.0010'] },
  ];
  for (const { law, value, uncertainty, printed } of edges) {
    test(law, () => {
      const rounded = roundByUncertainty({ value, uncertainty });
      assert.deepEqual([rounded.value, rounded.uncertainty], printed);
    });
  }

  test('the least uncertainty shows a hundred places, the greatest a whole number', () => {
    assert.equal(places(roundByUncertainty({ value: 1, uncertainty: 1e-99 }).value), 100);
    assert.equal(roundByUncertainty({ value: 1, uncertainty: Number.MAX_VALUE }).value, '0');
    assert.equal(roundByUncertainty({ value: 1, uncertainty: Number.MAX_VALUE }).uncertainty.length, 309);
  });

  for (const uncertainty of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e-200]) {
    test(`an uncertainty of ${uncertainty} is refused`, () => {
      assert.throws(() => roundByUncertainty({ value: 1, uncertainty }), RangeError);
    });
  }

  test('a value that is not finite is refused', () => {
    assert.throws(() => roundByUncertainty({ value: Number.NaN, uncertainty: 1 }), RangeError);
  });
});
