import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError } from '../../src/errors.ts';
import type { TraceOptions } from '../../src/trace/index.ts';
import { readTrace } from '../../src/trace/index.ts';
import { noisy, simulatePull, thinned } from './pull-simulator.ts';
import { asText, utf8 } from './trace-text.ts';

const pull = thinned(simulatePull().signals, 100);
const good = asText(pull);
const rows = good.trim().split('\n');

/** The good text with one row replaced. */
function withRow(row: number, text: string): string {
  return rows.map((line, i) => (i + 1 === row ? text : line)).join('\n');
}

interface BadInput {
  readonly title: string;
  readonly text: string;
  readonly code: string;
  /** Words the message must hold: the place or the cure. */
  readonly says: readonly string[];
  readonly options?: TraceOptions;
}

const CASES: readonly BadInput[] = [
  { title: 'an empty file', text: '', code: 'trace/empty', says: ['empty'] },
  { title: 'a file of blank lines', text: '\n \n\n', code: 'trace/empty', says: ['empty'] },
  { title: 'a header without readings', text: `${rows[0]}\n`, code: 'trace/no-readings', says: ['numbers'] },
  { title: 'one row', text: rows.slice(0, 2).join('\n'), code: 'trace/one-row', says: ['1 complete row'] },
  {
    title: 'text in a number',
    text: withRow(40, '3.8,kaput,1.9'),
    code: 'trace/text-in-number',
    says: ['Row 40', 'column 2', 'kaput'],
  },
  {
    title: 'text in the first number',
    text: withRow(2, '0,x1,0'),
    code: 'trace/text-in-number',
    says: ['Row 2', 'column 2'],
  },
  {
    title: 'a number run together with its unit',
    text: withRow(7, '0.5,1.2kN,0.3'),
    code: 'trace/text-in-number',
    says: ['Row 7', '1.2kN'],
  },
  {
    title: 'forces that are all nan',
    text: ['time [s],force [kN]', '0,nan', '1,nan', '2,nan'].join('\n'),
    code: 'trace/all-missing',
    says: ['force'],
  },
  {
    title: 'no force column',
    text: ['time [s],table [mm]', '0,1', '1,2', '2,3'].join('\n'),
    code: 'trace/no-force-column',
    says: ['1: "time[s]"', '2: "table[mm]"', '--force-column'],
  },
  {
    title: 'two force columns',
    text: ['time [s],force A [kN],force B [kN]', '0,1,1', '1,2,2'].join('\n'),
    code: 'trace/ambiguous-column',
    says: ['"force A[kN]"', '"force B[kN]"', '--force-column "force A[kN]"'],
  },
  {
    title: 'two travels with no word to tell them apart',
    text: ['time [s],force [kN],displacement 1 [mm],displacement 2 [mm]', '0,1,1,1', '1,2,2,2'].join('\n'),
    code: 'trace/ambiguous-column',
    says: ['displacement 1', 'displacement 2', '--table-column'],
  },
  {
    title: 'mixed decimal signs',
    text: asText(pull, { delimiter: ';' }).replace('\n0.40000;', '\n0,40000;'),
    code: 'trace/mixed-decimal-signs',
    says: ['Row 6', '0,40000'],
  },
  {
    title: 'a sign between thousands',
    text: ['time [s]\tforce [N]', '0\t1.5', '1\t1,200.5', '2\t3.5'].join('\n'),
    code: 'trace/mixed-decimal-signs',
    says: ['Row 3', '1,200.5'],
  },
  {
    title: 'a time that runs backwards',
    text: withRow(52, '1.0,0.0,1.0'),
    code: 'trace/time-backwards',
    says: ['Row 52', 'backwards'],
  },
  {
    title: 'a row with a cell too few',
    text: withRow(30, '2.8,0.1'),
    code: 'trace/short-row',
    says: ['Row 30', '2.8,0.1'],
  },
  {
    title: 'a record of zeros',
    text: asText({ ...pull, force_kN: pull.force_kN.map(() => 0) }),
    code: 'trace/nothing-loaded',
    says: ['zero'],
  },
  {
    title: 'a record of noise only',
    text: asText({ ...pull, force_kN: noisy(pull, 0.001, 3).force_kN.map((f, i) => f - (pull.force_kN[i] ?? 0)) }),
    code: 'trace/nothing-loaded',
    says: ['does not stand out'],
  },
  {
    title: 'a pull recorded with the tension negative',
    text: asText({ ...pull, force_kN: pull.force_kN.map((f) => -f) }),
    code: 'trace/negative-force',
    says: ['sign'],
  },
  {
    title: 'a missing force unit',
    text: ['time [s],force', '0,1', '1,2'].join('\n'),
    code: 'trace/unit-missing',
    says: ['"force"', 'kN', '--force-column "force[unit]"'],
  },
  {
    title: 'a missing time unit',
    text: ['time,force [kN]', '0,1', '1,2'].join('\n'),
    code: 'trace/unit-missing',
    says: ['time', 'min'],
  },
  {
    title: 'a bare tonf',
    text: ['time [s],force [tonf]', '0,1', '1,2'].join('\n'),
    code: 'trace/unit-ambiguous',
    says: ['metric', 'long', 'short'],
  },
  {
    title: 'an unknown unit',
    text: ['time [s],force [kN]', '0,1', '1,2'].join('\n'),
    options: { units: { force: 'oomph' } },
    code: 'trace/unit-unknown',
    says: ['oomph'],
  },
  {
    title: 'a unit of another quantity',
    text: ['time [s],force [kN]', '0,1', '1,2'].join('\n'),
    options: { units: { force: 'mm' } },
    code: 'trace/unit-unfit',
    says: ['mm'],
  },
  {
    title: 'a column that is not there',
    text: good,
    options: { columns: { force: 'pressure' } },
    code: 'trace/unknown-column',
    says: ['pressure', 'table'],
  },
  {
    title: 'a binary file',
    text: 'PK\u0003\u0004\u0000\u0000\u0008\u0000',
    code: 'trace/not-text',
    says: ['plain text'],
  },
  {
    title: 'a comma as delimiter and decimal sign',
    text: ['time [s],force [kN]', '0,0,1,5', '0,1,2,5'].join('\n'),
    code: 'trace/header-mismatch',
    says: ['Row 1', 'comma'],
  },
  {
    title: 'more names than columns',
    text: ['time [s];force [kN];table [mm]', '0;1', '1;2'].join('\n'),
    code: 'trace/header-mismatch',
    says: ['3', '2'],
  },
  {
    title: 'a clock past midnight',
    text: ['time;force [kN]', '23:59:59;1', '0:00:00;2', '0:00:01;3'].join('\n'),
    code: 'trace/time-backwards',
    says: ['midnight'],
  },
  {
    title: 'an area of zero',
    text: good,
    options: { area_mm2: 0 },
    code: 'trace/option-out-of-range',
    says: ['area_mm2'],
  },
];

for (const { title, text, code, says, options } of CASES) {
  test(`${title} is refused with its place and cure`, () => {
    assert.throws(
      () => readTrace(utf8(text), options),
      (error) => {
        assert.ok(isInputError(error), String(error));
        assert.equal(error.code, code, error.message);
        for (const words of says) assert.ok(error.message.includes(words), `"${error.message}" lacks "${words}"`);
        return true;
      },
    );
  });
}

test('a choice of columns travels in the context of the error', () => {
  try {
    readTrace(utf8(['time [s],force A [kN],force B [kN]', '0,1,1', '1,2,2'].join('\n')));
    assert.fail('it was read');
  } catch (error) {
    assert.ok(isInputError(error));
    assert.deepEqual(error.context.choices, [
      { column: 2, name: 'force A', unit: 'kN' },
      { column: 3, name: 'force B', unit: 'kN' },
    ]);
  }
});
