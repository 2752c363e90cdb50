import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import fc from 'fast-check';
import { figureText, setFigure, uncertaintyText, unitSign } from '../src/lib/figure.ts';

describe('a number carries the digits its uncertainty allows', () => {
  // JCGM 100:2008 7.2.6 (memory): y = 10.057 62 ohm with u = 27 milliohm is rounded to 10.058 ohm.
  test('the example of the guide', () => {
    assert.equal(figureText({ value: 10.05762, unit: 'ohm', uncertainty: 0.027 }), '10.058 ± 0.027\u00a0ohm');
  });

  // JCGM 100:2008 7.2.2 (memory): m = 100.021 47 g, U = 0.79 mg is stated as (100.021 47 ± 0.000 79) g.
  test('the other example of the guide', () => {
    assert.equal(figureText({ value: 100.02147, unit: 'g', uncertainty: 0.00079 }), '100.02147 ± 0.00079\u00a0g');
  });

  test('value and uncertainty end at the same decimal place, whatever they are', () => {
    const places = (digits: string) => digits.split('.')[1]?.length ?? 0;
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e4, noNaN: true }),
        (value, uncertainty) => {
          const figure = setFigure({ value, unit: 'kN', uncertainty });
          assert.equal(places(figure.value), places(figure.spread ?? ''));
          assert.ok(Math.abs(Number(figure.value.replace('\u2212', '-')) - value) <= uncertainty * 0.06);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  test('an uncertainty of zero is none', () => {
    assert.equal(figureText({ value: 1.234, unit: 'kN', uncertainty: 0 }), '1.23\u00a0kN');
  });
});

test('without an uncertainty the places are those of the bench', () => {
  assert.equal(figureText({ value: 84.4, unit: 'um' }), '84\u00a0µm');
  assert.equal(figureText({ value: 8.016, unit: 'mm' }), '8.02\u00a0mm');
  assert.equal(figureText({ value: 3557, unit: '' }), '3557');
  assert.equal(figureText({ value: 6.4512, unit: 'EUR/m' }), '6.45\u00a0EUR/m');
});

test('a minus is a minus, and never stands before zero', () => {
  assert.equal(figureText({ value: -0.001, unit: 'kN' }), '0.00\u00a0kN');
  assert.equal(figureText({ value: -1.5, unit: 'kN' }), '\u22121.50\u00a0kN');
});

test('a value that is only a bound says so first', () => {
  assert.equal(
    figureText({ value: 65.33, unit: 'kN', uncertainty: 0.76, isAtLeast: true }),
    'at least 65.33 ± 0.76\u00a0kN',
  );
});

test('a unit keeps the case of its letters', () => {
  assert.equal(unitSign('um'), 'µm');
  assert.equal(unitSign('N/mm2'), 'N/mm²');
  assert.equal(unitSign('kN m per EUR'), 'kN·m/EUR');
  assert.equal(unitSign('kN'), 'kN');
});

test('an uncertainty alone has two significant digits', () => {
  assert.equal(uncertaintyText(0.61834, 'kN'), '0.62\u00a0kN');
  assert.equal(uncertaintyText(12.7, 'N/mm2'), '13\u00a0N/mm²');
});
