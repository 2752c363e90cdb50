import type { Table } from './tables.ts';

/** Two example rows of a table as cells (one for `campaign`, which holds exactly one). */
export function exampleRecords(table: Table): string[][] {
  const fields = Object.values(table.fields);
  const first = fields.map((field) => field.example);
  const second = fields.map((field) => field.example2 ?? field.example);
  return table.name === 'campaign' ? [first] : [first, second];
}
