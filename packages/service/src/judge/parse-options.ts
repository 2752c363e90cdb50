import type { Row } from '@provinghouse/contract';
import type { ParseOptions } from '@provinghouse/core';

/** The columns of a recording as its pull names them. */
export type ColumnNames = Pick<Row<'pulls'>, 'time_column' | 'force_column' | 'table_column' | 'extension_column'>;

export function parseOptions(names: ColumnNames): ParseOptions {
  return {
    columns: {
      ...(names.time_column === null ? {} : { time: names.time_column }),
      ...(names.force_column === null ? {} : { force: names.force_column }),
      ...(names.table_column === null ? {} : { table: names.table_column }),
      ...(names.extension_column === null ? {} : { extension: names.extension_column }),
    },
  };
}
