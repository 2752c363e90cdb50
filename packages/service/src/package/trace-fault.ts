import type { Sheet, SheetRow } from '@provinghouse/contract';
import { isInputError, readTrace } from '@provinghouse/core';
import { type ColumnNames, parseOptions } from '../judge/parse-options.ts';
import type { PackageFault } from './fault.ts';

/** Every recording must be one that a pull can be read from, with the columns as its row of pulls names them. */
export function traceFaults(
  file: string,
  pulls: Sheet | undefined,
  files: ReadonlyMap<string, Uint8Array>,
): PackageFault[] {
  return (pulls?.rows ?? []).flatMap(({ row, cells }) => {
    const trace = word(cells.trace);
    const bytes = trace === null ? undefined : files.get(trace);
    const reason = bytes && unreadable(bytes, columnNames(cells));
    return reason ? [{ file, row, column: 'trace', fault: `names ${trace}, which cannot be read. ${reason}` }] : [];
  });
}

function word(cell: SheetRow['cells'][string]): string | null {
  return typeof cell === 'string' ? cell : null;
}

function columnNames(cells: SheetRow['cells']): ColumnNames {
  return {
    time_column: word(cells.time_column),
    force_column: word(cells.force_column),
    table_column: word(cells.table_column),
    extension_column: word(cells.extension_column),
  };
}

function unreadable(bytes: Uint8Array, names: ColumnNames): string | null {
  try {
    readTrace(bytes, parseOptions(names));
    return null;
  } catch (error) {
    if (!isInputError(error)) throw error;
    const settles =
      'choices' in error.context
        ? ' In this table time_column, force_column, table_column and extension_column say which.'
        : '';
    return error.message + settles;
  }
}
