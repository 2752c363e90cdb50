import { custody, pieces, products, samples } from './chain-tables.ts';
import type { RowOf } from './field.ts';
import { calibrations, campaign, checks, instruments, people } from './lab-tables.ts';
import { breaks, gauging, photographs, pulls, zinc } from './test-tables.ts';

export type { Table } from './table.ts';

/** Every table of the data package, in the order in which rows may refer back. */
export const tables = {
  campaign,
  people,
  instruments,
  calibrations,
  checks,
  products,
  samples,
  custody,
  pieces,
  gauging,
  pulls,
  breaks,
  zinc,
  photographs,
} as const;

export type TableName = keyof typeof tables;
export type Row<T extends TableName> = RowOf<(typeof tables)[T]['fields']>;

/** All rows of one campaign, as brought in. */
export type CampaignRows = { readonly [T in TableName]: readonly Row<T>[] };

/** A row of a table with the cells named, in the order of its columns; the others are empty. The caller fills those that may not be. */
export function rowWith<T extends TableName>(kind: T, cells: Partial<Row<T>>): Row<T> {
  const names = Object.keys(tables[kind].fields);
  const given: Readonly<Record<string, unknown>> = cells;
  // One cell for each column, by the line below; whether it may be empty is for the reader of the row to say.
  return Object.fromEntries(names.map((name) => [name, given[name] ?? null])) as Row<T>;
}
