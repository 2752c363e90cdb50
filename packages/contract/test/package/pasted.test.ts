import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  type CellValue,
  exampleRecords,
  type Field,
  type PasteOptions,
  readPasted,
  type Table,
  type TableName,
  tables,
  writeCell,
} from '../../src/package/index.ts';
import { copiedRow, pastedCells } from '../../src/package/pasted-cells.ts';

const here: PasteOptions = {
  defaults: { piece: 'ASH-8-1', repeat: 1, direction: 1, instrument: 'CAL-1', by: 'wren' },
};

function lines(...rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.join('\t')).join('\r\n');
}

function readings(text: string, options = here): readonly string[] {
  const { rows, faults } = readPasted('gauging', text, options);
  assert.deepEqual(faults, []);
  return rows.map(
    ({ cells }) => `${cells.link ?? ''} ${cells.position} ${cells.quantity} ${cells.direction} ${cells.value_mm}`,
  );
}

test('cells come back as they were copied, whatever they hold', () => {
  const cell = fc
    .string({ unit: fc.constantFrom('a', '"', '\t', '\n', '\r', ',', ' ', 'é', '5'), maxLength: 8 })
    .map((text) => text.trim());
  fc.assert(
    fc.property(
      fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
      fc.constantFrom('\n', '\r\n', '\r'),
      (rows, end) => {
        assert.deepEqual(pastedCells(rows.map(copiedRow).join(end) + end), rows);
      },
    ),
    { seed: 7, numRuns: 500 },
  );
});

test('a quote that opens no cell is text, as inches are written', () => {
  assert.deepEqual(pastedCells('5/16"\t"a" b\t"c\td"'), [['5/16"', '"a" b', 'c\td']]);
});

/** A value that a field can hold. */
function fieldValue(field: Field): fc.Arbitrary<CellValue> {
  const value = filledValue(field);
  return field.required ? value : fc.option(value, { nil: null });
}

function filledValue(field: Field): fc.Arbitrary<CellValue> {
  if (field.choices) return fc.constantFrom(...field.choices);
  switch (field.type) {
    case 'boolean':
      return fc.boolean();
    case 'date':
      return fc.constantFrom('2026-03-09', '2025-12-31');
    case 'datetime':
      return fc.constantFrom('2026-03-09T08:30:00Z', '2026-03-09T08:30');
    case 'integer':
      return fc.integer({ min: field.minimum ?? 0, max: field.maximum ?? 5000 });
    case 'number':
      return fc
        .double({ min: field.minimum ?? 0.001, max: field.maximum ?? 5000, noNaN: true })
        .map((value) => Number(value.toFixed(3)) + 0)
        .filter((value) => value > (field.exclusiveMinimum ?? -1));
    default:
      return fc
        .constantFrom('A', 'B-2', 'two words', '"quoted"', 'tab\tand\nline', '5/16"', 'a, b; c')
        .filter((text) => !field.pattern || text.length < 4);
  }
}

function rowsOf(table: Table): fc.Arbitrary<Record<string, CellValue>[]> {
  const row = fc.record(
    Object.fromEntries(Object.entries(table.fields).map(([name, field]) => [name, fieldValue(field)])),
  );
  return fc.array(row, { minLength: 1, maxLength: 6 });
}

for (const decimal of ['.', ','] as const) {
  test(`rows of every table, written with decimal ${decimal} and pasted, are the same rows`, () => {
    for (const name of Object.keys(tables) as TableName[]) {
      const table: Table = tables[name];
      const names = Object.keys(table.fields);
      fc.assert(
        fc.property(rowsOf(table), fc.constantFrom('\n', '\r\n'), (rows, end) => {
          const written = (row: Record<string, CellValue>) =>
            names.map((column) => {
              const cell = writeCell(row[column] ?? null);
              return typeof row[column] === 'number' ? cell.replace('.', decimal) : cell;
            });
          const text = [names, ...rows.map(written), names.map(() => ''), ['']].map(copiedRow).join(end);
          const given = readPasted(name, text, { decimal });
          assert.deepEqual(
            given.rows.map(({ cells }) => cells),
            rows.map((row) => ({ ...row })),
            name,
          );
          // Without being told the sign, what is read is right or refused, never another number.
          for (const [index, { cells }] of readPasted(name, text).rows.entries()) {
            for (const column of names) {
              if (cells[column] !== undefined) assert.equal(cells[column], rows[index]?.[column]);
            }
          }
        }),
        { seed: 7, numRuns: 60 },
      );
    }
  });
}

test('the example rows of every table are pasted without a fault', () => {
  for (const name of Object.keys(tables) as TableName[]) {
    const text = [Object.keys(tables[name].fields), ...exampleRecords(tables[name])].map(copiedRow).join('\n');
    assert.deepEqual({ name, faults: readPasted(name, text).faults }, { name, faults: [] });
  }
});

test('columns known from the screen need not be pasted, and plain or nearly right headings are taken with a note', () => {
  const text = lines(
    ['Link', 'Where on the link', 'Quantiy', 'Value [mm]'],
    ['1', 'Leg', 'Diameter', '8,12'],
    ['1', 'link', 'inside width', '10,9'],
    ['', '', '', ''],
  );
  assert.deepEqual(readings(text), ['1 leg diameter 1 8.12', '1 link innerWidth 1 10.9']);
  assert.deepEqual(readPasted('gauging', text, here).notes, ['"Quantiy" was read as quantity']);
});

test('a unit missing in a heading is said, another unit is a fault', () => {
  const table = (heading: string) =>
    readPasted('gauging', lines(['link', 'position', 'quantity', heading], ['1', 'leg', 'diameter', '8.1']), here);
  assert.match(table('value').notes.join(), /no unit.*mm/);
  assert.deepEqual(table('value (mm)').notes, []);
  for (const heading of ['value (in)', 'value_in', 'value [cm]']) {
    assert.match(table(heading).faults.find(({ row }) => row === 1)?.fault ?? '', /but value_mm is in mm; convert/);
  }
});

test('a number in its cell may carry the unit of its column, and one that turns into it exactly', () => {
  const one = (cell: string) =>
    readings(lines(['link', 'position', 'quantity', 'value_mm'], ['1', 'leg', 'diameter', cell]));
  assert.deepEqual(one('8.12 mm'), ['1 leg diameter 1 8.12']);
  assert.deepEqual(one('8,12\u00a0mm'), ['1 leg diameter 1 8.12']);
  assert.deepEqual(one('0.5 in'), ['1 leg diameter 1 12.7']);
});

test('a number with two readings is refused, unless the rest of the table shows the sign', () => {
  const table = (...cells: readonly string[]) =>
    readPasted(
      'gauging',
      lines(
        ['link', 'position', 'quantity', 'value_mm'],
        ...cells.map((cell, index) => [`${index + 1}`, 'leg', 'diameter', cell]),
      ),
      here,
    );
  assert.match(table('8,123').faults[0]?.fault ?? '', /8\.123 or 8123/);
  assert.deepEqual(
    table('8,123').faults.map(({ row, column }) => [row, column]),
    [[2, 'value_mm']],
  );
  assert.deepEqual(
    table('8,123', '8,1').rows.map(({ cells }) => cells.value_mm),
    [8.123, 8.1],
  );
  assert.match(
    table('8.12', '8,13')
      .faults.map(({ fault }) => fault)
      .join(),
    /both decimal points and decimal commas/,
  );
  assert.deepEqual(
    table('8.12', '8,13').faults.map(({ row }) => row),
    [2, 3],
  );
});

test('faults name the row as pasted and the heading as pasted, and are all found', () => {
  const text = lines(
    ['', ''],
    ['link', 'Position', 'quantity', 'value_mm', 'colour'],
    ['', ''],
    ['1', 'foot', 'diameter', 'eight', 'red'],
    ['1', 'leg', 'diameter', ''],
    ['1', 'leg', 'diameter', '8.1', '', 'over'],
  );
  const { faults } = readPasted('gauging', text, here);
  assert.deepEqual(
    faults.map(({ row, column }) => [row, column]).sort(),
    [
      [2, 'colour'],
      [4, 'value_mm'],
      [4, 'Position'],
      [5, 'value_mm'],
      [6, 'piece, link, position, quantity, direction, repeat'],
      [6, null],
    ].sort(),
  );
});

test('a column that a row needs and that was neither pasted nor known is named with what it is', () => {
  const { faults } = readPasted(
    'gauging',
    lines(['link', 'position', 'quantity', 'value_mm'], ['1', 'leg', 'diameter', '8']),
  );
  const missing = faults.map(({ column }) => column);
  for (const column of ['piece', 'direction', 'repeat', 'instrument', 'by'])
    assert.ok(missing.includes(column), column);
  assert.match(faults.find(({ column }) => column === 'by')?.fault ?? '', /read by/);
});

test('a matrix of links and quantities gives one reading for each filled cell', () => {
  const text = lines(
    ['Link', 'diameter 1 [mm]', 'diameter 2 [mm]', 'Weld 1 (mm)', 'Pitch mm', 'Inside width, mm', 'outer width (mm)'],
    ['1', '8,16', '8,13', '8,6', '24,04', '10,91', '27,16'],
    ['3', '8,21', '8,2', '', '23,71', '', ''],
    ['', '', ''],
  );
  assert.deepEqual(readings(text, { defaults: { piece: 'ASH-8-1', instrument: 'CAL-1', by: 'wren' } }), [
    '1 leg diameter 1 8.16',
    '1 leg diameter 2 8.13',
    '1 weld weldDiameter 1 8.6',
    '1 link pitch 1 24.04',
    '1 link innerWidth 1 10.91',
    '1 link outerWidth 1 27.16',
    '3 leg diameter 1 8.21',
    '3 leg diameter 2 8.2',
    '3 link pitch 1 23.71',
  ]);
  const { layout, notes } = readPasted('gauging', text, here);
  assert.deepEqual({ layout, notes }, { layout: 'matrix', notes: [] });
});

test('a matrix may leave its corner blank, misspell a heading, hold lengths and several pieces', () => {
  const text = lines(
    ['', 'piece', 'd1', 'd2', 'crown', 'Outsde width', 'length over 5 links'],
    ['2', 'A', '8.1', '8.2', '8.3', '27.1', ''],
    ['', 'B', '', '', '', '', '120.4'],
  );
  const { rows, faults, notes } = readPasted('gauging', text, here);
  assert.deepEqual(faults, []);
  assert.deepEqual(
    rows.map(({ cells }) => [
      cells.piece,
      cells.link,
      cells.position,
      cells.quantity,
      cells.over_links,
      cells.value_mm,
    ]),
    [
      ['A', 2, 'leg', 'diameter', null, 8.1],
      ['A', 2, 'leg', 'diameter', null, 8.2],
      ['A', 2, 'crown', 'diameter', null, 8.3],
      ['A', 2, 'link', 'outerWidth', null, 27.1],
      ['B', null, 'piece', 'lengthOverLinks', 5, 120.4],
    ],
  );
  assert.ok(notes.some((note) => note.startsWith('"Outsde width" was read as outerWidth')));
  assert.ok(notes.every((note) => /no unit|was read as/.test(note)));
});

test('a matrix names the row and the heading at fault', () => {
  const text = lines(
    ['link', 'diameter', 'diameter', 'pitch (in)', 'colour', 'weld'],
    ['1', '8.1', '8.2', '0.9', 'red', 'x'],
  );
  const { faults } = readPasted('gauging', text, here);
  const at = (column: string) => faults.filter((fault) => fault.column === column);
  assert.match(at('diameter')[0]?.fault ?? '', /diameter 1 and diameter 2/);
  assert.match(at('pitch (in)')[0]?.fault ?? '', /convert/);
  assert.match(at('colour')[0]?.fault ?? '', /no quantity/);
  assert.deepEqual(
    at('weld').map(({ row }) => row),
    [2],
  );
});

test('nothing, or a header alone, says what to copy', () => {
  for (const text of ['', '\n\n', '\t\t\r\n'])
    assert.match(readPasted('gauging', text, here).faults[0]?.fault ?? '', /copy/);
  assert.match(readPasted('gauging', 'link\tpitch', here).faults.at(-1)?.fault ?? '', /copy the rows/);
});
