import type { Fields } from './field.ts';

/** A table of the data package: one CSV file. */
export interface Table<F extends Fields = Fields> {
  readonly name: string;
  readonly about: string;
  readonly fields: F;
}

/** Defines a table and keeps the exact type of its fields, from which the type of its rows follows. */
export function table<const F extends Fields>(name: string, about: string, fields: F): Table<F> {
  return { name, about, fields };
}
