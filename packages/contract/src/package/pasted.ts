import type { CellValue } from './field.ts';
import { writeCell } from './field.ts';
import { pastedCells } from './pasted-cells.ts';
import { columnNamings, type HeadingMatch, matchHeading } from './pasted-heading.ts';
import { looksLikeMatrix, readMatrix } from './pasted-matrix.ts';
import { type DecimalSign, decimalSignOf } from './pasted-number.ts';
import { type PastedRecord, readRecords } from './pasted-record.ts';
import type { SheetFault, SheetRow } from './sheet.ts';
import type { Table } from './table.ts';
import { type TableName, tables } from './tables.ts';

/** What the screen knows beside the pasted text. */
export interface PasteOptions {
  /** Values for columns that were not pasted: the piece on screen, the instrument in hand, who is reading. */
  readonly defaults?: Readonly<Record<string, CellValue>> | undefined;
  /** The decimal sign, where the person was asked; left out it is found from the numbers. */
  readonly decimal?: DecimalSign | undefined;
}

/** A heading and what it was taken for. */
export interface PastedColumn {
  readonly heading: string;
  /** Name of the column; in a matrix also the quantity read in it. Null where it was not understood. */
  readonly column: string | null;
}

/** What was pasted. Rows count as they stood in the pasted text, its first line being 1. */
export interface PastedTable {
  /** `list`: one row for each row of the table; `matrix`: gauging with a row for each link, a column for each quantity. */
  readonly layout: 'list' | 'matrix';
  readonly columns: readonly PastedColumn[];
  /** Every row; a cell that could not be read is undefined and has its fault. Take them only where there are no faults. */
  readonly rows: readonly SheetRow[];
  /** Columns are named by their heading as pasted. */
  readonly faults: readonly SheetFault[];
  /** What was understood otherwise than written, to be shown before the rows are taken. */
  readonly notes: readonly string[];
}

/** The pasted rows with their header found. */
export interface PastedSource {
  readonly table: Table;
  readonly headings: readonly string[];
  /** Row number of the header. */
  readonly headerRow: number;
  readonly body: readonly { readonly row: number; readonly cells: readonly string[] }[];
  readonly options: PasteOptions;
}

/**
 * Reads a table copied from a spreadsheet: a header row, then rows, tabs between cells. Headings may be our column names, the
 * words of their descriptions or near misses (noted); decimal points or decimal commas, one of the two throughout; blank rows
 * are passed over; columns given as defaults need not be there. Gauging may also come as a matrix: a row for each link, a
 * column for each quantity (`diameter 1`, `diameter 2`, `pitch`), empty cells not read.
 *
 * Nothing is guessed: a heading in another unit, a number with two readings, a column that is not known are faults, which name
 * row and heading and are all found at once.
 */
export function readPasted(name: TableName, text: string, options: PasteOptions = {}): PastedTable {
  const table: Table = tables[name];
  const lines = pastedCells(text).map((cells, index) => ({ row: index + 1, cells }));
  const filled = lines.filter(({ cells }) => cells.some((cell) => cell !== ''));
  const [header, ...body] = filled;
  if (header === undefined) return failed('nothing was pasted; copy the table with its header row');
  const source = { table, headings: trimEnd(header.cells), headerRow: header.row, body, options };
  const tooWide = widthFaults(source);
  const read = name === 'gauging' && looksLikeMatrix(source) ? readMatrix(source) : readList(source);
  const empty =
    body.length === 0 ? [{ row: header.row, column: null, fault: 'is the only row; copy the rows too' }] : [];
  return { ...read, faults: [...read.faults, ...tooWide, ...empty] };
}

function failed(fault: string): PastedTable {
  return { layout: 'list', columns: [], rows: [], faults: [{ row: null, column: null, fault }], notes: [] };
}

function trimEnd(cells: readonly string[]): readonly string[] {
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

function widthFaults({ headings, body }: PastedSource): SheetFault[] {
  return body.flatMap(({ row, cells }) => {
    const surplus = cells.slice(headings.length).find((cell) => cell !== '');
    const fault = `holds "${surplus}" beyond the last heading; copy the header row with all its columns`;
    return surplus === undefined ? [] : [{ row, column: null, fault }];
  });
}

function readList(source: PastedSource): PastedTable {
  const { table, headings, headerRow, body, options } = source;
  const matches = headings.map((heading) => matchHeading(heading, columnNamings(table)));
  const columns = headings.map((heading, index) => ({ heading, column: meaningOf(matches[index]) }));
  const faults = columns.flatMap(({ heading, column }, index): SheetFault[] => {
    const match = matches[index] ?? null;
    const fault = (text: string) => [{ row: headerRow, column: heading === '' ? null : heading, fault: text }];
    if (match !== null && 'fault' in match) return fault(match.fault);
    if (column === null) return fault(unknownHeading(source, index));
    const first = columns.findIndex((other) => other.column === column);
    return first < index ? fault(`means ${column}, as does "${headings[first]}"; copy one of the two`) : [];
  });
  const defaults = Object.entries(options.defaults ?? {}).filter(([name]) => !columns.some((c) => c.column === name));
  const records = body.map(({ row, cells }): PastedRecord => {
    const own = columns.flatMap(({ heading, column }, index) =>
      column === null ? [] : [[column, { cell: cells[index] ?? '', heading }] as const],
    );
    const given = defaults.map(([name, value]) => [name, { cell: writeCell(value), heading: null }] as const);
    return { row, cells: Object.fromEntries([...given, ...own]) };
  });
  const decimal = options.decimal ?? numbersOf(source, columns);
  const known = new Set([...columns.flatMap(({ column }) => column ?? []), ...defaults.map(([name]) => name)]);
  const read = readRecords({ table, records, known, decimal, headerRow });
  const notes = matches.flatMap((match) => (match !== null && 'meaning' in match ? (match.note ?? []) : []));
  return { layout: 'list', columns, rows: read.rows, faults: [...faults, ...read.faults], notes };
}

function meaningOf(match: HeadingMatch<string> | { readonly fault: string } | null | undefined): string | null {
  return match !== null && match !== undefined && 'meaning' in match ? match.meaning : null;
}

function unknownHeading({ table, headings, body }: PastedSource, index: number): string {
  const heading = headings[index] ?? '';
  if (heading !== '')
    return `is not a column of ${table.name}; its columns are ${Object.keys(table.fields).join(', ')}`;
  const filled = body.some(({ cells }) => (cells[index] ?? '') !== '');
  return `column ${index + 1} has no heading${filled ? '' : ' and no cells'}; name it or leave it out`;
}

function numbersOf({ table, body }: PastedSource, columns: readonly PastedColumn[]): DecimalSign | 'mixed' | null {
  const isNumber = columns.map(({ column }) => column !== null && table.fields[column]?.type === 'number');
  return decimalSignOf(body.flatMap(({ cells }) => cells.filter((_, index) => isNumber[index])));
}
