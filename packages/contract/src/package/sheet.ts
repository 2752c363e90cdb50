import { type CellValue, readCell } from './field.ts';
import { keyFields, rowId } from './key.ts';
import { nearest } from './nearest.ts';
import type { Table } from './tables.ts';

/** Something wrong in a table. Rows count as a spreadsheet shows them: the header is row 1. */
export interface SheetFault {
  readonly row: number | null;
  readonly column: string | null;
  /** What is there and what would be right. */
  readonly fault: string;
}

export interface SheetRow {
  readonly row: number;
  /** One value for each field of the table; undefined where the cell could not be read. */
  readonly cells: Readonly<Record<string, CellValue | undefined>>;
}

export interface Sheet {
  readonly rows: readonly SheetRow[];
  readonly faults: readonly SheetFault[];
}

/**
 * Reads the records of a table, header first. Every fault is found, not only the first. A column that may be empty may
 * be left out altogether; rows with nothing in them are passed over but counted.
 */
export function readSheet(table: Table, records: readonly (readonly string[])[]): Sheet {
  const [header, ...body] = records;
  if (!header || header.every((name) => name.trim() === '')) {
    const names = Object.keys(table.fields).join(',');
    return {
      rows: [],
      faults: [{ row: 1, column: null, fault: `is empty; the first row must name the columns: ${names}` }],
    };
  }
  const names = header.map((name) => name.trim());
  const faults = headerFaults(table, names);
  const rows: SheetRow[] = [];
  body.forEach((record, index) => {
    const row = index + 2;
    if (record.every((cell) => cell.trim() === '')) return;
    faults.push(...widthFaults(row, record, names));
    rows.push({ row, cells: readCells({ table, names, record, row, faults }) });
  });
  faults.push(...duplicateKeys(table, rows));
  return { rows, faults };
}

function headerFaults(table: Table, names: readonly string[]): SheetFault[] {
  const faults: SheetFault[] = [];
  names.forEach((name, index) => {
    if (name === '') faults.push({ row: 1, column: null, fault: `column ${index + 1} has no name` });
    else if (names.indexOf(name) !== index) faults.push({ row: 1, column: name, fault: 'stands twice in the header' });
    else if (!Object.hasOwn(table.fields, name))
      faults.push({ row: 1, column: name, fault: unknownColumn(table, name) });
  });
  for (const [name, field] of Object.entries(table.fields)) {
    if (field.required && !names.includes(name))
      faults.push({ row: 1, column: name, fault: `column is missing; ${table.name} needs it` });
  }
  return faults;
}

function unknownColumn(table: Table, name: string): string {
  const known = Object.keys(table.fields);
  const near = nearest(name, known);
  return `is not a column of ${table.name}; ${near ? `did you mean ${near}?` : `its columns are ${known.join(', ')}`}`;
}

function widthFaults(row: number, record: readonly string[], names: readonly string[]): SheetFault[] {
  if (record.length === names.length) return [];
  const surplus = record.slice(names.length);
  // Spreadsheets pad rows with empty cells; nothing is lost by passing those over.
  if (record.length > names.length && surplus.every((cell) => cell.trim() === '')) return [];
  const cure = record.length > names.length ? 'put a cell that holds a comma in double quotes' : 'keep the empty cells';
  return [
    { row, column: null, fault: `has ${record.length} cells where the header names ${names.length} columns; ${cure}` },
  ];
}

interface RowSource {
  readonly table: Table;
  readonly names: readonly string[];
  readonly record: readonly string[];
  readonly row: number;
  readonly faults: SheetFault[];
}

function readCells({ table, names, record, row, faults }: RowSource): Record<string, CellValue | undefined> {
  const cells: Record<string, CellValue | undefined> = {};
  for (const [name, field] of Object.entries(table.fields)) {
    const place = names.indexOf(name);
    if (place < 0) {
      cells[name] = field.required ? undefined : null;
      continue;
    }
    const reading = readCell(field, record[place] ?? '');
    cells[name] = reading.ok ? reading.value : undefined;
    if (!reading.ok) faults.push({ row, column: name, fault: reading.fault });
  }
  return cells;
}

function duplicateKeys(table: Table, rows: readonly SheetRow[]): SheetFault[] {
  const key = keyFields(table);
  const seen = new Map<string, number>();
  const faults: SheetFault[] = [];
  for (const { row, cells } of rows) {
    if (key.some((name) => cells[name] === undefined)) continue;
    const id = rowId(table, cells);
    const earlier = seen.get(id);
    if (earlier === undefined) seen.set(id, row);
    else
      faults.push({
        row,
        column: key.join(', '),
        fault: `repeats row ${earlier}; ${key.join(' with ')} must be unique in ${table.name}`,
      });
  }
  return faults;
}
