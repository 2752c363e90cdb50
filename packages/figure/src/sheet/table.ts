import { minus, numberWords } from './number-words.ts';

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
  readonly shown: ShownDigits;
}

/** How many digits are shown: of the largest number, the others to the same place; or of each, where they span many decades. */
export interface ShownDigits {
  readonly digits: number;
  readonly of: 'largest' | 'each';
}

export type FigureCell = string | number | null;

export function textColumn(key: string, heading: string): FigureColumn {
  return { key, heading, unit: null, isNumber: false, shown: { digits: 4, of: 'largest' } };
}

export function numberColumn(
  key: string,
  heading: string,
  unit: string | null,
  shown: Partial<ShownDigits> = {},
): FigureColumn {
  return { key, heading, unit, isNumber: true, shown: { digits: 4, of: 'largest', ...shown } };
}

/** The cells as they are shown: numbers of a column to one place, whole numbers whole, a dash for none. */
export function shownCells({ columns, rows }: FigureTable): readonly (readonly string[])[] {
  const places = columns.map((column, at) =>
    placesOf(
      column,
      rows.map((row) => row[at] ?? null),
    ),
  );
  return rows.map((row) =>
    row.map((cell, at) => {
      if (cell === null) return '–';
      if (typeof cell === 'string') return cell;
      const column = columns[at];
      if (column?.shown.of === 'each') return numberWords(cell, column.shown.digits);
      return minus(cell.toFixed(places[at] ?? 0));
    }),
  );
}

function placesOf({ shown }: FigureColumn, cells: readonly FigureCell[]): number {
  const numbers = cells.filter((cell) => typeof cell === 'number');
  const largest = Math.max(0, ...numbers.map(Math.abs));
  if (largest === 0 || numbers.every(Number.isInteger)) return 0;
  return Math.min(Math.max(shown.digits - 1 - Math.floor(Math.log10(largest)), 0), 20);
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
