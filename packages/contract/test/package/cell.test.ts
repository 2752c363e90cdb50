import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { optional, readCell, required, writeCell } from '../../src/package/index.ts';

const field = { description: 'x', example: '' };

test('a number written to a cell is read back to the last bit', () => {
  const law = fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
    const reading = readCell(required('number', field), writeCell(value));
    assert.deepEqual(reading, { ok: true, value: value + 0 });
  });
  fc.assert(law, { seed: 7, numRuns: 2000 });
});

test('a whole number written to a cell is read back', () => {
  const law = fc.property(fc.maxSafeInteger(), (value) => {
    assert.deepEqual(readCell(required('integer', field), writeCell(value)), { ok: true, value: value + 0 });
  });
  fc.assert(law, { seed: 7, numRuns: 500 });
});

test('text without blanks around it or control characters is read back letter for letter', () => {
  const text = fc.string({ unit: 'grapheme' }).filter((t) => t === t.trim() && !/\p{Cc}/u.test(t) && t !== '');
  const law = fc.property(text, (value) => {
    assert.deepEqual(readCell(required('string', field), writeCell(value)), { ok: true, value });
  });
  fc.assert(law, { seed: 7, numRuns: 500 });
});

test('true, false and not recorded are read back', () => {
  for (const value of [true, false, null])
    assert.deepEqual(readCell(optional('boolean', field), writeCell(value)), { ok: true, value });
});

test('an empty cell is not recorded, never zero', () => {
  assert.deepEqual(readCell(optional('number', field), '  '), { ok: true, value: null });
});

const refused = [
  ['number', '8,02', /decimal point: 8\.02/],
  ['number', '1.234,5', /plain number/],
  ['number', 'NaN', /plain number/],
  ['number', 'Infinity', /plain number/],
  ['number', '1e999', /finite/],
  ['number', '0x10', /plain number/],
  ['number', '12 kN', /plain number/],
  ['integer', '2.5', /whole number/],
  ['integer', '9007199254740993', /whole number/],
  ['boolean', 'yes', /true or false/],
  ['date', '14.03.2026', /2026-03-14/],
  ['date', '2026-02-31', /2026-03-14/],
  ['datetime', '2026-03-14 09:30', /T09:30/],
  ['string', 'a\u0000b', /control character/],
] as const;

for (const [type, cell, cure] of refused) {
  test(`a ${type} is not read from ${JSON.stringify(cell)}, and the fault says what would be right`, () => {
    const reading = readCell(required(type, field), cell);
    assert.ok(!reading.ok);
    assert.match(reading.fault, cure);
  });
}

test('a bound is kept, and the fault names it', () => {
  const share = optional('number', { ...field, minimum: 0, maximum: 100 });
  assert.deepEqual(readCell(share, '100'), { ok: true, value: 100 });
  assert.deepEqual(readCell(share, '100.1'), { ok: false, fault: 'holds "100.1"; it must be at most 100' });
  const size = required('number', { ...field, exclusiveMinimum: 0 });
  assert.deepEqual(readCell(size, '0'), { ok: false, fault: 'holds "0"; it must be more than 0' });
});

test('a choice is one of those listed, capitals included', () => {
  const position = required('string', { ...field, choices: ['crown', 'weld'] });
  assert.deepEqual(readCell(position, 'weld'), { ok: true, value: 'weld' });
  assert.deepEqual(readCell(position, 'Weld'), { ok: false, fault: 'holds "Weld"; it must be one of: crown, weld' });
});

test('a pattern holds for the whole cell', () => {
  const code = required('string', { ...field, pattern: { expression: '[A-Z]+', words: 'capitals' } });
  assert.deepEqual(readCell(code, 'AB'), { ok: true, value: 'AB' });
  assert.deepEqual(readCell(code, 'AB/../C'), { ok: false, fault: 'holds "AB/../C"; it must be capitals' });
});
