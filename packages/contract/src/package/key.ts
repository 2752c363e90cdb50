import type { CellValue } from './field.ts';
import type { Table } from './tables.ts';

/** Names of the fields that together make a row unique in its table, in the order of the columns. */
export function keyFields(table: Table): string[] {
  return Object.entries(table.fields)
    .filter(([, field]) => field.key)
    .map(([name]) => name);
}

/**
 * The id of a row: its key cells, joined with `/` where the table has more than one. In a joined id `~` and `/` inside
 * a cell are written `~0` and `~1` (as in RFC 6901), so that two different keys never give one id.
 */
export function rowId(table: Table, row: Readonly<Record<string, CellValue | undefined>>): string {
  const cells = keyFields(table).map((name) => String(row[name] ?? ''));
  const [only] = cells;
  if (cells.length === 1 && only !== undefined) return only;
  return cells.map((cell) => cell.replaceAll('~', '~0').replaceAll('/', '~1')).join('/');
}
