import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { clockSeconds, fromBench, parseUnit, toBench, UNITS } from '../../src/units/index.ts';

/** One of the unit in its bench unit. */
function one(text: string): number {
  const finding = parseUnit(text);
  assert.equal(finding.kind, 'known', text);
  return finding.kind === 'known' ? toBench(1, finding.unit) : Number.NaN;
}

// Definitions, each exact: standard gravity 9.80665 m/s2, pound 0.45359237 kg, inch 25.4 mm (BIPM SI Brochure; NIST SP 811, B.8).
test('every factor is its definition', () => {
  const pound_N = 0.45359237 * 9.80665;
  assert.equal(one('N'), 0.001);
  assert.equal(one('MN'), 1000);
  assert.equal(one('kgf'), 0.00980665);
  assert.equal(one('kp'), 0.00980665);
  assert.equal(one('tf'), 9.80665);
  assert.ok(Math.abs(one('lbf') * 1000 - pound_N) < 1e-15);
  assert.ok(Math.abs(one('kip') - pound_N) < 1e-15);
  assert.ok(Math.abs(one('tonf (long)') - (pound_N * 2240) / 1000) < 1e-13);
  assert.ok(Math.abs(one('tonf (short)') - (pound_N * 2000) / 1000) < 1e-13);
  assert.deepEqual(['um', 'mm', 'cm', 'm', 'in'].map(one), [0.001, 1, 10, 1000, 25.4]);
  assert.deepEqual(['ms', 's', 'min', 'h'].map(one), [0.001, 1, 60, 3600]);
});

test('a ton without its kind is refused with the three kinds', () => {
  for (const text of ['t', 'ton', 'tons', 'tonf', 'Tonf', '[tonf]']) {
    const finding = parseUnit(text);
    assert.equal(finding.kind, 'ambiguous', text);
    assert.equal(finding.kind === 'ambiguous' && finding.choices.length, 3);
  }
});

test('a ton with its kind spelled out is that ton', () => {
  for (const text of ['long tonf', 'tonf (long)', 'tonf_long', 'tonf UK', 'long ton-force'])
    assert.equal(one(text), one('tonf (long)'));
  for (const text of ['short tonf', 'tonf (US)', 'us tonf']) assert.equal(one(text), one('tonf (short)'));
  for (const text of ['metric tonf', 'tonf (metric)', 'tonne-force']) assert.equal(one(text), one('tf'));
});

test('case tells units apart only where it must; a header is no unit', () => {
  assert.equal(one('KN'), 1);
  assert.equal(one('MM'), 1);
  assert.equal(parseUnit('mn').kind, 'ambiguous');
  for (const text of ['', 'force', 'Load (tonf long)', 'kN/s', 'MPa', '%'])
    assert.equal(parseUnit(text).kind, 'unknown', text);
});

test('there and back is where it was', () => {
  const property = fc.property(
    fc.constantFrom(...UNITS),
    fc.double({ min: -1e9, max: 1e9, noNaN: true }),
    ({ unit }, value) => {
      assert.ok(
        Math.abs(fromBench(toBench(value, unit), unit) - value) <= 1e-12 * Math.abs(value) + Number.MIN_VALUE * 1e6,
      );
    },
  );
  fc.assert(property, { seed: 7, numRuns: 300 });
});

test('a clock has three parts; two are ambiguous', () => {
  assert.equal(clockSeconds('1:02:03.5'), 3723.5);
  assert.equal(clockSeconds('00:00:07,25'), 7.25);
  assert.equal(clockSeconds('26:00:00'), 93600);
  for (const text of ['02:03', '1:60:00', '1:00:61', 'noon', '']) assert.equal(clockSeconds(text), null, text);
});
