import { quantityNames } from '@provinghouse/core';
import type { Field } from './field.ts';
import { plainText, unitOfColumn } from './pasted-heading.ts';
import { type DecimalSign, plainNumberCell } from './pasted-number.ts';
import { rowFaults } from './row-rule.ts';
import { readSheet, type SheetFault, type SheetRow } from './sheet.ts';
import type { Table } from './table.ts';
import type { TableName } from './tables.ts';

/** One row of the table to be, by column name. */
export interface PastedRecord {
  /** Row of the pasted text. */
  readonly row: number;
  readonly cells: Readonly<Record<string, { readonly cell: string; readonly heading: string | null }>>;
}

export interface RecordSource {
  readonly table: Table;
  readonly records: readonly PastedRecord[];
  /** Columns that were pasted or have a default. */
  readonly known: ReadonlySet<string>;
  readonly decimal: DecimalSign | 'mixed' | null;
  readonly headerRow: number;
}

/** Pasted records as rows of a table, with every fault placed where it stood in the pasted text. */
export function readRecords({ table, records, known, decimal, headerRow }: RecordSource): {
  readonly rows: readonly SheetRow[];
  readonly faults: readonly SheetFault[];
} {
  const names = Object.keys(table.fields).filter((name) => known.has(name));
  const faults: SheetFault[] = [];
  const unread = new Set<string>();
  const cells = records.map((record, index) =>
    names.map((name) => {
      const { cell = '', heading = null } = record.cells[name] ?? {};
      const field = table.fields[name];
      const plain =
        field === undefined || cell === '' ? { ok: true as const, cell } : plainCell(name, field, { cell, decimal });
      if (plain.ok) return plain.cell;
      faults.push({ row: record.row, column: heading ?? name, fault: plain.fault });
      unread.add(`${index} ${name}`);
      return '';
    }),
  );
  const sheet = readSheet(table, [names, ...cells]);
  // The sheet counts its own rows from 2, below its header; a cell refused above is not empty as well.
  const indexOf = (row: number) => row - 2;
  for (const { row, column, fault } of sheet.faults) {
    if (row === null || row === 1) faults.push({ row: headerRow, column, fault: missingColumn(table, column, fault) });
    else if (column === null || !unread.has(`${indexOf(row)} ${column}`)) {
      const record = records[indexOf(row)];
      const heading = column === null ? null : (record?.cells[column]?.heading ?? column);
      faults.push({ row: record?.row ?? null, column: heading, fault: pastedRow(fault, records) });
    }
  }
  const rows = sheet.rows.map(({ row, cells: values }) => {
    const refused = names.filter((name) => unread.has(`${indexOf(row)} ${name}`)).map((name) => [name, undefined]);
    return { row: records[indexOf(row)]?.row ?? row, cells: { ...values, ...Object.fromEntries(refused) } };
  });
  sheet.rows.forEach(({ row }, index) => {
    const record = records[indexOf(row)];
    // A table of the package has its own rules; its name is one of them.
    for (const { column, fault } of rowFaults(table.name as TableName, rows[index]?.cells ?? {})) {
      faults.push({ row: record?.row ?? null, column: record?.cells[column]?.heading ?? column, fault });
    }
  });
  return { rows, faults };
}

function plainCell(
  name: string,
  field: Field,
  { cell, decimal }: { readonly cell: string; readonly decimal: DecimalSign | 'mixed' | null },
): { readonly ok: true; readonly cell: string } | { readonly ok: false; readonly fault: string } {
  if (field.type === 'boolean') return { ok: true, cell: cell.toLowerCase() };
  if (field.choices) return { ok: true, cell: choiceOf(field.choices, cell) };
  if (field.type !== 'number' && field.type !== 'integer') return { ok: true, cell };
  if (decimal === 'mixed' && /[.,]/.test(cell)) {
    const fault = `holds "${cell}", and the table has both decimal points and decimal commas; write all numbers with one`;
    return { ok: false, fault };
  }
  return plainNumberCell(cell, { decimal: decimal === 'mixed' ? null : decimal, unit: unitOfColumn(name) });
}

/** A choice by its own text, or by it without capitals and blanks; a quantity also by its name at the bench. */
function choiceOf(choices: readonly string[], cell: string): string {
  const wanted = plainText(cell);
  const names = quantityNames as Readonly<Record<string, string>>; // choices other than quantities have no entry
  const isCalled = (choice: string) =>
    plainText(choice) === wanted || (names[choice] ?? '').split(' (').some((part) => plainText(part) === wanted);
  return choices.includes(cell) ? cell : (choices.find(isCalled) ?? cell);
}

function missingColumn(table: Table, column: string | null, fault: string): string {
  const description = column === null ? undefined : table.fields[column]?.description;
  return description === undefined ? fault : `${fault} (${description})`;
}

/** "repeats row 3" counts the rows of the sheet; the reader counts those pasted. */
function pastedRow(fault: string, records: readonly PastedRecord[]): string {
  return fault.replace(/^repeats row (\d+)/, (whole, row: string) => {
    const record = records[Number(row) - 2];
    return record === undefined ? whole : `repeats row ${record.row}`;
  });
}
