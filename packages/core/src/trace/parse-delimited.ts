import { InputError } from '../errors.ts';
import { cellValue } from './cell-value.ts';
import type { Delimiter, Layout, Line } from './layout.ts';
import { lineAt, nextLineStart, splitCells } from './layout.ts';
import type { ScanState } from './number-scanner.ts';
import { scanNumber } from './number-scanner.ts';

const CODES: Readonly<Record<Delimiter, number>> = { tab: 9, semicolon: 59, comma: 44, blanks: 32 };

/** Which columns to read, and how. */
export interface TablePlan {
  /** 0-based places of the wanted columns, ascending. */
  readonly wanted: readonly number[];
  readonly names: readonly string[];
  /** Those of `wanted` that hold clock times. */
  readonly clocks: readonly number[];
  readonly decimal?: '.' | ',' | undefined;
}

/** The wanted columns as numbers in the file's own units; missing readings are NaN. */
export interface NumberTable {
  readonly columns: readonly Float64Array[];
  readonly rows: number;
  /** Number of the text line a row of readings stood on. */
  readonly lineOf: (row: number) => number;
  readonly decimal: '.' | ',';
  /** True when a wanted cell is missing somewhere. */
  readonly hasGaps: boolean;
  readonly notes: readonly string[];
}

const LINES_FOR_DECIMAL = 500;

/** The first decimal sign in a wanted cell decides; a comma that parts the columns is none. */
function findDecimal(bytes: Uint8Array, layout: Layout, plan: TablePlan): '.' | ',' {
  if (layout.delimiter === 'comma') return '.';
  const numeric = plan.wanted.filter((column) => !plan.clocks.includes(column));
  let at = layout.dataFrom;
  for (let k = 0; k < LINES_FOR_DECIMAL && at < bytes.length; k++) {
    const line = lineAt(bytes, at, 0);
    const cells = splitCells(line.text, layout.delimiter);
    for (const column of numeric) {
      const sign = /[.,]/.exec(cells[column] ?? '')?.[0];
      if (sign === '.' || sign === ',') return sign;
    }
    at = line.next;
  }
  const comma = bytes.indexOf(44, at);
  const point = bytes.indexOf(46, at);
  return comma >= 0 && (point < 0 || comma < point) ? ',' : '.';
}

/** Rows that the readings are likely to hold, from the length of lines all over the file. */
function likelyRows(bytes: Uint8Array, from: number): number {
  let shortest = Number.POSITIVE_INFINITY;
  for (let share = 0; share < 1; share += 0.05) {
    let at = Math.floor(from + share * (bytes.length - from));
    for (let k = 0; k < 5 && at < bytes.length; k++) {
      const next = nextLineStart(bytes, at);
      // No row of two readings is shorter than three bytes.
      if (k > 0 && next - at > 2) shortest = Math.min(shortest, next - at);
      at = next;
    }
  }
  return Math.ceil((bytes.length - from) / Math.max(2, shortest)) + 1;
}

function enlarged(values: Float64Array): Float64Array {
  const larger = new Float64Array(values.length * 2);
  larger.set(values);
  return larger;
}

function shortRow(line: Line, columns: number): InputError {
  const { number: row, text } = line;
  return new InputError(
    'trace/short-row',
    `Row ${row}: "${text}" has fewer than ${columns} cells. Complete the row or take it out.`,
    {
      row,
      text,
      columns,
    },
  );
}

/** The bytes with everything a row needs to be read. `slots` holds the output by column, null for a column that is passed over. */
interface Reader {
  readonly bytes: Uint8Array;
  readonly layout: Layout;
  readonly plan: TablePlan;
  readonly decimal: '.' | ',';
  readonly slots: (Float64Array | null)[];
  capacity: number;
  hasGaps: boolean;
}

function makeReader(bytes: Uint8Array, layout: Layout, plan: TablePlan, decimal: '.' | ','): Reader {
  const capacity = likelyRows(bytes, layout.dataFrom);
  const last = plan.wanted.at(-1) ?? 0;
  const slots = Array.from({ length: last + 1 }, (_, i) =>
    plan.wanted.includes(i) ? new Float64Array(capacity) : null,
  );
  return { bytes, layout, plan, decimal, slots, capacity, hasGaps: false };
}

function enlarge(reader: Reader): void {
  reader.slots.forEach((slot, i) => {
    if (slot) reader.slots[i] = enlarged(slot);
  });
  reader.capacity *= 2;
}

/**
 * Reads rows of plain numbers for as long as nothing else comes: no blank after a cell, nothing missing. Hands back where it
 * stopped, at the start of a line, and writes the rows read to `state`. Never looks at the last line, so that no byte past the end is asked for.
 */
function plainRows(
  reader: Reader,
  from: number,
  firstRow: number,
  until: number,
  state: ScanState & { row: number },
): number {
  const { bytes, slots, capacity } = reader;
  const sign = CODES[reader.layout.delimiter];
  const decimal = reader.decimal === '.' ? 46 : 44;
  const blanks = reader.layout.delimiter === 'blanks';
  const last = slots.length - 1;
  let row = firstRow;
  let lineFrom = from;
  while (lineFrom < until && row < capacity) {
    let i = lineFrom;
    for (let column = 0; column <= last; column++) {
      const slot = slots[column] as Float64Array | null;
      if (slot === null) {
        while (blanks && bytes[i] === 32) i++;
        while (bytes[i] !== sign && (bytes[i] as number) > 13) i++;
      } else {
        slot[row] = scanNumber(bytes, i, decimal, state);
        i = state.at;
      }
      const code = i < 0 ? 0 : (bytes[i] as number);
      if (code === sign) i++;
      else if (column < last || (code !== 10 && code !== 13)) {
        state.row = row;
        return lineFrom;
      }
    }
    while (bytes[i] !== 10 && bytes[i] !== 13) i++;
    lineFrom = bytes[i] === 13 && bytes[i + 1] === 10 ? i + 2 : i + 1;
    row++;
  }
  state.row = row;
  return lineFrom;
}

/** Reads one line with care; false when it holds no row (an empty line, or a last line that was cut off). */
function carefulRow(reader: Reader, line: Line, row: number): 'row' | 'empty' | 'cut off' {
  const { layout, plan, slots, decimal } = reader;
  if (line.text.trim() === '') return 'empty';
  const cells = splitCells(line.text, layout.delimiter);
  if (cells.length < slots.length) {
    // A last line without its end is a record that was cut off while it was written; anywhere else it is a fault.
    if (line.next > reader.bytes.length && row > 1) return 'cut off';
    throw shortRow(line, layout.columns);
  }
  slots.forEach((slot, column) => {
    if (!slot) return;
    const place = { row: line.number, column: column + 1, name: plan.names[column] ?? '' };
    const value = cellValue(cells[column] ?? '', decimal, plan.clocks.includes(column), place);
    if (Number.isNaN(value)) reader.hasGaps = true;
    slot[row] = value;
  });
  return 'row';
}

interface Progress {
  readonly rows: number;
  /** Lines that hold no row, as: rows read before, lines passed over so far. */
  readonly skips: readonly { readonly row: number; readonly skipped: number }[];
  readonly cutOff: boolean;
}

/** One pass over the bytes: plain rows at speed, everything else line by line. */
function readRows(reader: Reader): Progress {
  const { bytes, layout } = reader;
  const lastLine = Math.max(bytes.lastIndexOf(10, bytes.length - 2), bytes.lastIndexOf(13, bytes.length - 3)) + 1;
  const skips: { row: number; skipped: number }[] = [];
  const state = { at: 0, row: 0 };
  let at = layout.dataFrom;
  let row = 0;
  let cutOff = false;
  while (at < bytes.length) {
    at = plainRows(reader, at, row, lastLine, state);
    row = state.row;
    if (row === reader.capacity) enlarge(reader);
    if (at >= bytes.length) break;
    const line = lineAt(bytes, at, layout.dataLine + row + (skips.at(-1)?.skipped ?? 0));
    const found = carefulRow(reader, line, row);
    if (found === 'row') row++;
    else skips.push({ row, skipped: (skips.at(-1)?.skipped ?? 0) + 1 });
    cutOff = found === 'cut off';
    at = line.next;
  }
  return { rows: row, skips, cutOff };
}

/**
 * Reads the wanted columns of delimited text straight from its bytes into typed arrays, in one pass and without an object per row.
 * Empty lines are stepped over; missing cells become NaN; an incomplete last line is left out with a note.
 * Throws `trace/text-in-number`, `trace/mixed-decimal-signs` and `trace/short-row`, each with its row.
 */
export function parseDelimited(bytes: Uint8Array, layout: Layout, plan: TablePlan): NumberTable {
  const decimal = plan.decimal ?? findDecimal(bytes, layout, plan);
  const reader = makeReader(bytes, layout, plan, decimal);
  const { rows, skips, cutOff } = readRows(reader);
  const lineOf = (row: number): number => {
    let skipped = 0;
    for (const skip of skips) if (skip.row <= row) skipped = skip.skipped;
    return layout.dataLine + row + skipped;
  };
  return {
    columns: reader.slots.filter((slot) => slot !== null).map((slot) => slot.subarray(0, rows)),
    rows,
    lineOf,
    decimal,
    hasGaps: reader.hasGaps,
    notes: cutOff ? ['The last line of the file is incomplete and was left out.'] : [],
  };
}
