import { type CellValue, readCell, type Table, type TableName, tables, writeCell } from '@provinghouse/contract';

/** What is wrong with a row, by the same reading as for a package: each value must survive being written to a cell and read back. */
export function rowFaultsOf(kind: TableName, body: Readonly<Record<string, CellValue>>): string[] {
  const table: Table = tables[kind];
  const strange = Object.keys(body).filter((name) => !Object.hasOwn(table.fields, name));
  const faults = strange.map((name) => `${name} is not a field of ${kind}`);
  for (const [name, field] of Object.entries(table.fields)) {
    const value = body[name] ?? null;
    const reading = readCell(field, writeCell(value));
    if (!reading.ok) faults.push(`${name} ${reading.fault}`);
    else if (reading.value !== value) faults.push(`${name} must be a ${field.type} without blanks around it`);
  }
  return faults;
}
