import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { readTypedNumber, type TypedNumber, type TypedNumberField } from '../../src/units/index.ts';

function value(text: string, field: TypedNumberField = {}): number | string {
  const read = readTypedNumber(text, field);
  return read.ok ? read.value : read.code;
}

function refused(text: string, field: TypedNumberField = {}): Extract<TypedNumber, { ok: false }> {
  const read = readTypedNumber(text, field);
  assert.ok(!read.ok, text);
  return read;
}

const decimals = fc.integer({ min: 0, max: 5 });
const plain = fc
  .record({ number: fc.double({ min: -9999, max: 9999, noNaN: true }), places: decimals })
  .map(({ number, places }) => number.toFixed(places));

test('a number with a decimal point is the number that the language reads, whatever blanks stand round it', () => {
  fc.assert(
    fc.property(plain, fc.constantFrom('', ' ', '\t', '\u00a0', '\u202f ', '\r\n'), (text, blank) => {
      assert.equal(value(`${blank}${text}${blank}`), Number(text) + 0);
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('a decimal comma gives the number of the decimal point, or a refusal that names it', () => {
  fc.assert(
    fc.property(plain, (text) => {
      const read = readTypedNumber(text.replace('.', ','));
      if (read.ok) assert.equal(read.value, Number(text) + 0);
      else assert.ok(read.code === 'ambiguous-comma' && read.readings.includes(Math.abs(Number(text))));
    }),
    { seed: 7, numRuns: 500 },
  );
});

test('a comma before three digits is refused with both its readings, unless the field can hold one of them only', () => {
  assert.deepEqual(refused('1,234').readings, [1.234, 1234]);
  assert.match(refused('1,234').fault, /1\.234 or 1234/);
  assert.equal(value('8,123', { within: { least: 4, greatest: 16 } }), 8.123);
  const read = readTypedNumber('8,123', { within: { least: 4, greatest: 16 } });
  assert.ok(read.ok && read.notes.some((note) => note.includes('decimal comma')));
  assert.equal(value('8,123', { within: { least: 1, greatest: 10000 } }), 'ambiguous-comma');
  assert.equal(value('8,123', { within: { least: 5000, greatest: 10000 } }), 'ambiguous-comma');
  assert.equal(value('0,123'), 0.123);
  assert.equal(value('8,12'), 8.12);
  assert.equal(value('8,1234'), 8.1234);
  assert.equal(value('1,234', { decimal: ',' }), 1.234);
  assert.equal(value('1,234', { decimal: '.' }), 'ambiguous-comma');
});

test('signs between thousands are taken where they can be nothing else', () => {
  for (const text of ['1.234.567', '1,234,567', '1\u00a0234\u00a0567', '1\u2009234\u2009567'])
    assert.equal(value(text), 1234567);
  assert.equal(value('1.234,5'), 1234.5);
  assert.equal(value('1,234.5'), 1234.5);
  assert.equal(value('1\u202f234,5'), 1234.5);
  for (const text of ['12 345', '1.23.456', '1,23,456', '1,234.5.6', '01.234,5', '12\u00a034']) {
    assert.equal(value(text), 'not-a-number', text);
  }
});

test('a decimal sign other than that of the rest of the table is refused', () => {
  assert.equal(value('8.1', { decimal: ',' }), 'mixed-signs');
  assert.equal(value('8,1', { decimal: '.' }), 'mixed-signs');
  assert.equal(value('1.234,5', { decimal: '.' }), 'mixed-signs');
});

test('the unit of the field may stand behind the number, and one that turns into it exactly', () => {
  assert.equal(value('8.12 mm', { unit: 'mm' }), 8.12);
  assert.equal(value('8,12mm', { unit: 'mm' }), 8.12);
  assert.equal(value('1 in', { unit: 'mm' }), 25.4);
  assert.equal(value('0.5"', { unit: 'mm' }), 12.7);
  assert.equal(value('84 µm', { unit: 'mm' }), 0.084);
  assert.equal(value('40 %', { unit: '%' }), 40);
  assert.equal(value('2.7 kg', { unit: 'kg' }), 2.7);
  assert.equal(value('2.7 KG', { unit: 'kg' }), 2.7);
  const read = readTypedNumber('1 in', { unit: 'mm' });
  assert.ok(read.ok && read.decimals === null && read.notes.length === 1);
});

test('a unit is never guessed', () => {
  assert.equal(value('4 t', { unit: 'kN' }), 'unit');
  assert.match(refused('4 t', { unit: 'kN' }).fault, /metric.*long.*short/);
  assert.equal(value('4 kN', { unit: 'mm' }), 'unit');
  assert.equal(value('4 kN', { unit: 'kg' }), 'unit');
  assert.equal(value('4 mm'), 'unit');
  assert.equal(value('4 furlongs', { unit: 'mm' }), 'unit');
  assert.equal(value('4 %', { unit: 'mm' }), 'unit');
  assert.equal(value('0x10'), 'unit');
});

test('what is no number is refused, with what would be right', () => {
  assert.equal(value(''), 'empty');
  assert.equal(value(' \u00a0'), 'empty');
  for (const text of ['eight', '8-12', '--8', '8..1', '8,,1', '.', ',', '-', '1e999', 'NaN', 'Infinity', '8 12']) {
    assert.equal(value(text), 'not-a-number', text);
  }
});

test('the decimals are those typed, zeros at the end too', () => {
  const places = (text: string) => {
    const read = readTypedNumber(text);
    return read.ok ? read.decimals : undefined;
  };
  assert.deepEqual(['8', '8.', '8.10', '8,100 0', '+08.12', '1.5e2'].map(places), [0, 0, 2, undefined, 2, null]);
});

test('a minus zero is zero, and the minus sign of print is a minus', () => {
  assert.ok(Object.is(value('-0'), 0));
  assert.equal(value('\u22128.1'), -8.1);
});
