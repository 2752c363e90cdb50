import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  exampleRecords,
  nearest,
  readSheet,
  rowId,
  type Table,
  type TableName,
  tables,
} from '../../src/package/index.ts';

const people: Table = tables.people;

test('the example rows of every table are read without a fault', () => {
  for (const name of Object.keys(tables) as TableName[]) {
    const { rows, faults } = readSheet(tables[name], [
      Object.keys(tables[name].fields),
      ...exampleRecords(tables[name]),
    ]);
    assert.deepEqual({ name, faults }, { name, faults: [] });
    assert.equal(rows.length, name === 'campaign' ? 1 : 2);
  }
});

test('columns may stand in any order, and one that may be empty may be left out', () => {
  const { rows, faults } = readSheet(people, [
    ['name', 'person'],
    ['First', 'a'],
  ]);
  assert.deepEqual(faults, []);
  assert.deepEqual(rows, [{ row: 2, cells: { person: 'a', name: 'First', role: null } }]);
});

test('rows are counted as a spreadsheet shows them, blank ones included', () => {
  const { rows, faults } = readSheet(people, [['person', 'name'], ['a', 'A'], ['', ''], [''], ['b', '']]);
  assert.deepEqual(
    rows.map(({ row }) => row),
    [2, 5],
  );
  assert.deepEqual(faults, [{ row: 5, column: 'name', fault: 'is empty, but every row needs it' }]);
});

test('every fault of a table is found at once', () => {
  const { faults } = readSheet(people, [
    ['persn', 'name', 'name', 'role'],
    ['a', 'A', 'A', 'r', 'surplus'],
    ['a', '', ''],
  ]);
  assert.deepEqual(
    faults.map(({ row, column }) => ({ row, column })),
    [
      { row: 1, column: 'persn' },
      { row: 1, column: 'name' },
      { row: 1, column: 'person' },
      { row: 2, column: null },
      { row: 3, column: null },
      { row: 3, column: 'name' },
    ],
  );
  assert.match(faults[0]?.fault ?? '', /did you mean person\?/);
});

test('a column named as a property of every object is still unknown', () => {
  const { faults } = readSheet(people, [
    ['person', 'name', 'constructor'],
    ['a', 'A', 'x'],
  ]);
  assert.deepEqual(
    faults.map(({ column }) => column),
    ['constructor'],
  );
});

test('a key that repeats names the row it repeats', () => {
  const { faults } = readSheet(people, [
    ['person', 'name'],
    ['a', 'A'],
    ['b', 'B'],
    ['a', 'C'],
  ]);
  assert.deepEqual(faults, [{ row: 4, column: 'person', fault: 'repeats row 2; person must be unique in people' }]);
});

test('a header alone is an empty table; nothing at all is a fault', () => {
  assert.deepEqual(readSheet(people, [['person', 'name', 'role']]), { rows: [], faults: [] });
  assert.match(
    readSheet(people, []).faults[0]?.fault ?? '',
    /is empty; the first row must name the columns: person,name,role/,
  );
});

test('two different keys never give one id', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '/', '~', '0', '1'), minLength: 1, maxLength: 4 });
  const key = fc.record({ pull: cell, link: fc.nat(3), examiner: cell });
  const law = fc.property(key, key, (a, b) => {
    const same = a.pull === b.pull && a.link === b.link && a.examiner === b.examiner;
    assert.equal(rowId(tables.breaks, a) === rowId(tables.breaks, b), same);
  });
  fc.assert(law, { seed: 7, numRuns: 3000 });
});

test('the nearest code is the one a slip of the finger away, and none where nothing is near', () => {
  const codes = ['ASH-8-1', 'ASH-8-2', 'BIRCH-8-1'];
  assert.equal(nearest('ASH-81', codes), 'ASH-8-1');
  assert.equal(nearest('brich-8-1', codes), 'BIRCH-8-1');
  assert.equal(nearest('X', codes), null);
  assert.equal(nearest('CEDAR', codes), null);
});
