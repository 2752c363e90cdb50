import { pieces, products, samples } from './chain-tables.ts';
import type { RowOf } from './field.ts';
import { calibrations, campaign, instruments, people } from './lab-tables.ts';
import { breaks, gauging, photographs, pulls, zinc } from './test-tables.ts';

export type { Table } from './table.ts';

/** Every table of the data package, in the order in which rows may refer back. */
export const tables = {
  campaign,
  people,
  instruments,
  calibrations,
  products,
  samples,
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
