import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '@provinghouse/core';
import fc from 'fast-check';
import { linePattern, matchLine } from '../../src/frame/line-pattern.ts';
import { type ScannedNumber, scanNumber } from '../../src/frame/number-text.ts';

const bytesOf = (text: string) => new Uint8Array(Buffer.from(text, 'latin1'));

function read(pattern: string, line: string, decimal: '.' | ',' = '.') {
  const compiled = linePattern(pattern, decimal);
  const values = new Float64Array(compiled.fields.length);
  const match = matchLine(compiled, bytesOf(line), values);
  return match === 'read' ? [...values] : match;
}

const READ: readonly [string, string, '.' | ',', readonly number[]][] = [
  ['F {force[kN]} T {table[mm]}', 'F 12.5 T 3', '.', [12.5, 3]],
  ['F {force[kN]} T {table[mm]}', '  F   +12.5   T  -3.25 \t', '.', [12.5, -3.25]],
  ['{force[N]};{table[mm]}', '12,5;-0,5', ',', [12.5, -0.5]],
  ['{time[ms]},{force[kN]}', '1500,.5', '.', [1500, 0.5]],
  ['ST,GS,{force[kN]}kN', 'ST,GS,+0012.50kN', '.', [12.5]],
  ['{*} F={force[kN]}', 'panel 3 ok F=7', '.', [7]],
  ['{force[kN]} {*}', '7e-1 whatever follows', '.', [0.7]],
  ['{{{force[kN]}}}', '{4}', '.', [4]],
  ['{time[hh:mm:ss]} {force[kN]}', '01:02:03.5 4', '.', [3723.5, 4]],
];
for (const [pattern, line, decimal, expected] of READ)
  test(`"${pattern}" reads "${line}"`, () => assert.deepEqual(read(pattern, line, decimal), expected));

const OTHER: readonly [string, string][] = [
  ['F {force[kN]}', 'f 12.5'],
  ['F {force[kN]}', 'F 12.5 kN'],
  ['F {force[kN]} kN', 'F 12.5 lbf'],
  ['F {force[kN]}', 'F 12,5'],
  ['F {force[kN]}', 'F 1 2'],
  ['F {force[kN]}', ''],
  ['F {force[kN]}', 'F -'],
];
for (const [pattern, line] of OTHER)
  test(`"${pattern}" does not take "${line}"`, () => assert.equal(read(pattern, line), 'other shape'));

for (const word of ['NaN', 'nan', '-nan', 'OL', 'inf', '----', '*****', 'ERR'])
  test(`"${word}" where a number should be is unreadable, not another shape and not a number`, () => {
    const found = read('F {force[kN]} T {table[mm]}', `F ${word} T 1`);
    assert.deepEqual(found, { unreadable: `force is no number: "${word}"` });
  });

const WRONG: readonly [string, '.' | ',', RegExp][] = [
  ['F {force[kN]', '.', /never closed/],
  ['F force}', '.', /closes nothing/],
  ['just text', '.', /no field/],
  ['{time[s]}', '.', /no field/],
  ['{force[kN]}{table[mm]}', '.', /nothing parts/],
  ['{force[kN]} {force[kN]}', '.', /twice/],
  ['{*}{force[kN]}', '.', /followed by plain text/],
  ['{force[kN]},{table[mm]}', ',', /decimal sign/],
  ['{(a+)+$}', '.', /no field/],
  ['° {force[kN]}', '.', /ASCII/],
  ['{time} {force[kN]}', '.', /no unit/],
  ['{time[kN]} {force[kN]}', '.', /cannot be/],
  ['x'.repeat(300), '.', /longer/],
];
for (const [pattern, decimal, words] of WRONG)
  test(`the pattern "${pattern.slice(0, 30)}" is refused with its fault`, () => {
    assert.throws(
      () => linePattern(pattern, decimal),
      (error) => isInputError(error) && error.code.startsWith('source/') && words.test(error.message),
    );
  });

test('a number is read to the last bit as Number() reads it', () => {
  const into: ScannedNumber = { value: 0, end: 0 };
  const text = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    fc.tuple(fc.integer(), fc.nat(10)).map(([n, places]) => (n / 10 ** places).toFixed(places)),
    fc.stringMatching(/^[+-]?\d{1,22}(\.\d{0,22})?$/),
  );
  const property = fc.property(text, (number) => {
    assert.equal(scanNumber(bytesOf(number), 0, '.', into), true);
    assert.equal(into.value, Number(number));
    assert.equal(into.end, number.length);
  });
  fc.assert(property, { seed: 7, numRuns: 2000 });
});

test('whatever bytes come, a match ends and gives finite numbers or none', () => {
  const compiled = linePattern('{*}a {force[kN]} {*}b{table[mm]}');
  const values = new Float64Array(2);
  const property = fc.property(fc.oneof(fc.uint8Array({ maxLength: 200 }), fc.string().map(bytesOf)), (line) => {
    if (matchLine(compiled, line, values) === 'read') assert.ok(values.every(Number.isFinite));
  });
  fc.assert(property, { seed: 7, numRuns: 1000 });
});
