import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { TraceOptions } from '../../src/trace/index.ts';
import { parseTrace } from '../../src/trace/index.ts';
import { simulatePull, thinned } from './pull-simulator.ts';
import { asText, latin1, utf8, utf16 } from './trace-text.ts';

const pull = thinned(simulatePull().signals, 250);
const plain = parseTrace(utf8(asText(pull)));

/** Reads the same record written in another way and demands the very same numbers. */
function sameAsPlain(bytes: Uint8Array, options: TraceOptions = {}): void {
  const read = parseTrace(bytes, options);
  assert.deepEqual(read.time_s, plain.time_s);
  assert.deepEqual(read.force_kN, plain.force_kN);
  assert.deepEqual(read.table_mm, plain.table_mm);
}

const preamble = ['Piece:\tA-1', 'Diameter:\t8.02\tmm', 'Größe:\t5', '', 'Operator remarks; none, really'];
const FORMS: Readonly<Record<string, Uint8Array>> = {
  'comma and point': utf8(asText(pull)),
  'semicolon and decimal comma': utf8(asText(pull, { delimiter: ';', decimal: ',' })),
  'tab and decimal comma': utf8(asText(pull, { delimiter: '\t', decimal: ',' })),
  'blanks and decimal comma': utf8(asText(pull, { delimiter: '   ', decimal: ',' })),
  'comma with blanks': utf8(asText(pull, { delimiter: ' , ' })),
  'CR LF': utf8(asText(pull, { lineEnd: '\r\n' })),
  'CR alone': utf8(asText(pull, { lineEnd: '\r' })),
  'UTF-8 with its mark': utf8(`\ufeff${asText(pull)}`),
  'UTF-16 LE with its mark': utf16(asText(pull), true, true),
  'UTF-16 BE with its mark': utf16(asText(pull), false, true),
  'UTF-16 LE without a mark': utf16(asText(pull, { lineEnd: '\r\n', delimiter: '\t' }), true, false),
  'UTF-16 BE without a mark': utf16(asText(pull), false, false),
  'Latin-1 with a preamble': latin1(
    asText(pull, { preamble, delimiter: ';', decimal: ',', header: 'Zeit [s];Prüfkraft [kN];Traversenweg [mm]' }),
  ),
  'a preamble of names, values and units': utf8(asText(pull, { preamble, delimiter: '\t' })),
  'a units row': utf8(asText(pull, { header: 'Time,Force,Table\ns,kN,mm' })),
  'a units row in brackets': utf8(asText(pull, { header: 'Time,Force,Table\n[s],[kN],(mm)' })),
  'units after an underscore': utf8(asText(pull, { header: 'time_s,force_kN,table_mm' })),
  'units after a slash': utf8(asText(pull, { header: 'Time / s,Force / kN,Crosshead/mm' })),
  'units after a comma': utf8(asText(pull, { delimiter: ';', header: 'Time, s;Force, kN;Stroke, mm' })),
  'units in round brackets': utf8(asText(pull, { header: 'Time (s),Load (kN),Machine Displacement (mm)' })),
  'units after a blank': utf8(asText(pull, { header: 'time s,force kN,table mm' })),
  'names and units parted by blanks': utf8(
    asText(pull, { delimiter: ' ', header: 'Time [s] Force [kN] Crosshead [mm]' }),
  ),
  'French words': utf8(asText(pull, { delimiter: ';', header: 'Temps (s);Force (kN);Déplacement (mm)' })),
  'quoted cells with decimal commas': utf8(
    asText(pull, { decimal: ',', delimiter: '","', header: 'time [s]","force [kN]","table [mm]' })
      .split('\n')
      .map((line) => (line === '' ? '' : `"${line}"`))
      .join('\n'),
  ),
  'empty lines between rows': utf8(asText(pull).replaceAll('\n', '\n\n')),
  'no line end at the end': utf8(asText(pull).trimEnd()),
  'plus signs': utf8(asText(pull).replaceAll(/,(\d)/g, ',+$1')),
};

for (const [name, bytes] of Object.entries(FORMS))
  test(`${name}: the same numbers to the last bit`, () => sameAsPlain(bytes));

test('a last line that was cut off is left out with a note', () => {
  const read = parseTrace(utf8(`${asText(pull)}99.0,0.0`));
  assert.equal(read.force_kN.length, plain.force_kN.length);
  assert.match((read.notes ?? []).join(' '), /last line .* incomplete/);
});

test('missing readings of the table are NaN, rows without a force are left out and counted', () => {
  const read = parseTrace(utf8('time [s],force [kN],table [mm]\n0,1,\n1,nan,2\n2,3,n/a\n3,4,5\n'));
  assert.deepEqual([...read.force_kN], [1, 3, 4]);
  assert.deepEqual([...(read.table_mm ?? [])], [Number.NaN, Number.NaN, 5]);
  assert.match((read.notes ?? []).join(' '), /1 rows without a force/);
});

test('exponents, and numbers longer than a double holds, are read to the nearest double', () => {
  const read = parseTrace(utf8('time [s];force [kN]\n0;1.25e-3\n1;0.0007143817674338952\n2;123456789.123456789\n'));
  assert.deepEqual([...read.force_kN], [0.00125, 0.0007143817674338952, Number('123456789.123456789')]);
});

test('clock times count in seconds from midnight', () => {
  const read = parseTrace(utf8('Time;Force [kN]\n01:00:00,5;1,5\n01:00:01,0;2,5\n01:01:00,25;2,75\n'));
  assert.deepEqual([...(read.time_s ?? [])], [3600.5, 3601, 3660.25]);
  assert.equal(read.columns.time?.unit, 'hh:mm:ss');
});

test('units are converted exactly: N, lbf, long tons, inches, minutes, milliseconds', () => {
  const read = parseTrace(utf8('time [min],force [lbf],stroke [in]\n0,1000,1\n1,2000,2\n'));
  assert.deepEqual([...(read.time_s ?? [])], [0, 60]);
  assert.deepEqual([...read.force_kN], [4.4482216152605, 8.896443230521]);
  assert.deepEqual([...(read.table_mm ?? [])], [25.4, 50.8]);
  assert.deepEqual([...parseTrace(utf8('time [ms],force [N]\n0,1\n1,2500\n')).force_kN], [0.001, 2.5]);
  assert.equal(parseTrace(utf8('time [s],load [long tonf]\n0,1\n1,2\n')).columns.force.unit, 'long tonf');
});

test('options settle columns by name, by name and unit, and by number; none leaves a signal out', () => {
  const text = utf8('t [s],A,B,C [mm]\n0,1,10,5\n1,2,20,6\n');
  const byName = parseTrace(text, { columns: { force: 'B[N]', table: 'none' } });
  assert.deepEqual([...byName.force_kN], [0.01, 0.02]);
  assert.equal(byName.table_mm, null);
  const byNumber = parseTrace(text, { columns: { force: '2', extension: '4' }, units: { force: 'kN' } });
  assert.deepEqual([...byNumber.force_kN], [1, 2]);
  assert.deepEqual([...(byNumber.extension_mm ?? [])], [5, 6]);
  assert.match(byNumber.columns.force.because, /asked for as "2"; unit as given/);
});

test('extension and table are told apart, and each says why', () => {
  const choose = (header: string): (string | undefined)[] => {
    const { columns } = parseTrace(utf8(`time [s],force [kN],${header}\n0,1,1,1\n1,2,2,2\n`));
    assert.ok((columns.table?.because ?? columns.extension?.because ?? '').length > 10);
    return [columns.table?.name, columns.extension?.name];
  };
  assert.deepEqual(choose('displacement [mm],machine displacement [mm]'), ['machine displacement', 'displacement']);
  assert.deepEqual(choose('displacement [mm],extensometer displacement [mm]'), [
    'displacement',
    'extensometer displacement',
  ]);
  assert.deepEqual(choose('Traversenweg [mm],Feindehnung [mm]'), ['Traversenweg', 'Feindehnung']);
  assert.deepEqual(choose('crosshead extension [mm],extension [mm]'), ['crosshead extension', 'extension']);
  assert.deepEqual(choose('stroke [mm],strain [%]'), ['stroke', undefined]);
});

test('columns of stress, strain, rate and set point are none of the signals', () => {
  const { columns } = parseTrace(
    utf8('time [s],force setpoint [kN],force [kN],force rate [kN/s],stress [MPa]\n0,9,1,3,4\n1,9,2,3,4\n'),
  );
  assert.equal(columns.force.name, 'force');
  assert.equal(columns.table, null);
});

test('a column of dates or remarks beside the readings is stepped over', () => {
  const read = parseTrace(
    utf8('Date;Time;Force [kN];Remark\n01.05.2031;00:00:01;0,5;ok\n01.05.2031;00:00:02;1,5;ok\n'),
  );
  assert.deepEqual([...read.force_kN], [0.5, 1.5]);
  assert.deepEqual([...(read.time_s ?? [])], [1, 2]);
});

test('columns aligned with blanks are read in their places, also when some are passed over', () => {
  const lines = Array.from({ length: 40 }, (_, i) =>
    [7, i, 100 - i, 2 * i].map((value) => value.toFixed(2).padStart(9)).join(' '),
  );
  const read = parseTrace(utf8(`junk t_s other F_kN\n${lines.join('\n')}\n`));
  assert.deepEqual(
    [...(read.time_s ?? [])],
    lines.map((_, i) => i),
  );
  assert.deepEqual(
    [...read.force_kN],
    lines.map((_, i) => 2 * i),
  );
});
