/** The numbers of a figure. */
export interface FigureTable {
  readonly columns: readonly FigureColumn[];
  /** One cell for each column; null where there is no number. */
  readonly rows: readonly (readonly FigureCell[])[];
}

export interface FigureColumn {
  /** Name with its unit, as in the data package: `force_kN`. */
  readonly key: string;
  readonly heading: string;
  readonly unit: string | null;
  readonly isNumber: boolean;
}

export type FigureCell = string | number | null;

export function textColumn(key: string, heading: string): FigureColumn {
  return { key, heading, unit: null, isNumber: false };
}

export function numberColumn(key: string, heading: string, unit: string | null): FigureColumn {
  return { key, heading, unit, isNumber: true };
}

/** A cell as it is shown: numbers to four significant digits, a dash for none. */
export function cellWords(cell: FigureCell): string {
  if (cell === null) return '–';
  if (typeof cell === 'string') return cell;
  return String(Number(cell.toPrecision(4))).replace('-', '−');
}

/**
 * The table as CSV (RFC 4180), numbers to twelve digits, absent cells empty. Text that a spreadsheet would run as a formula
 * gets an apostrophe in front.
 */
export function csvOf(table: FigureTable): string {
  const lines = [table.columns.map((column) => field(column.key)), ...table.rows.map((row) => row.map(field))];
  return lines.map((cells) => `${cells.join(',')}\r\n`).join('');
}

function field(cell: FigureCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(Number(cell.toPrecision(12)));
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
