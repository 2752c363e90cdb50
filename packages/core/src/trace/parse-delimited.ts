import { InputError } from '../errors.ts';
import { cellValue } from './cell-value.ts';
import type { Delimiter, Layout } from './layout.ts';
import { lineAt } from './layout.ts';
import type { ScanState } from './number-scanner.ts';
import { scanNumber } from './number-scanner.ts';
import { decode } from './text-encoding.ts';

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
  readonly notes: readonly string[];
}

/** The first decimal sign in the readings decides; a comma that parts the columns is none. */
function findDecimal(bytes: Uint8Array, layout: Layout): '.' | ',' {
  if (layout.delimiter === 'comma') return '.';
  for (let i = layout.dataFrom; i < bytes.length; i++) {
    if (bytes[i] === 46) return '.';
    if (bytes[i] === 44) return ',';
  }
  return '.';
}

function countCode(bytes: Uint8Array, from: number, code: number): number {
  let count = 0;
  for (let at = bytes.indexOf(code, from); at >= 0; at = bytes.indexOf(code, at + 1)) count++;
  return count;
}

/** No fewer than the lines there are: a CR LF pair counts once unless lone CRs end lines too. */
function countLines(bytes: Uint8Array, from: number): number {
  const carriageReturn = bytes.indexOf(13, from);
  const lone = carriageReturn >= 0 && bytes[carriageReturn + 1] !== 10;
  return 1 + countCode(bytes, from, 10) + (lone ? countCode(bytes, from, 13) : 0);
}

function shortRow(bytes: Uint8Array, from: number, line: number, columns: number): InputError {
  const text = lineAt(bytes, from, line).text;
  return new InputError('trace/short-row', `Row ${line}: "${text}" has fewer than ${columns} cells. Complete the row or take it out.`, {
    row: line,
    text,
    columns,
  });
}

/** Slots by column: the output array, or undefined for a column that is passed over. */
function slots(plan: TablePlan, columns: readonly Float64Array[]): (Float64Array | undefined)[] {
  const bySlot: (Float64Array | undefined)[] = [];
  plan.wanted.forEach((column, i) => {
    bySlot[column] = columns[i];
  });
  return Array.from({ length: (plan.wanted.at(-1) ?? 0) + 1 }, (_, i) => bySlot[i]);
}

interface Progress {
  rows: number;
  /** Text lines that hold no readings, as pairs: row reached so far, lines skipped so far. */
  readonly skips: { row: number; skipped: number }[];
  cutOff: boolean;
}

/** One pass over the bytes: a number per wanted cell, everything else stepped over. */
function fill(bytes: Uint8Array, layout: Layout, plan: TablePlan, decimal: '.' | ',', out: readonly Float64Array[]): Progress {
  const end = bytes.length;
  const sign = CODES[layout.delimiter];
  const blanks = layout.delimiter === 'blanks';
  const decimalCode = decimal === '.' ? 46 : 44;
  const bySlot = slots(plan, out);
  const last = bySlot.length - 1;
  const state: ScanState = { at: 0 };
  const progress: Progress = { rows: 0, skips: [], cutOff: false };
  let i = layout.dataFrom;
  let row = 0;
  let skipped = 0;
  while (i < end) {
    const lineFrom = i;
    while (bytes[i] === 32 || (blanks && bytes[i] === 9)) i++;
    let code = bytes[i];
    let full = code !== 10 && code !== 13 && i < end;
    for (let column = 0; full && column <= last; column++) {
      const slot = bySlot[column];
      if (slot !== undefined) {
        while (bytes[i] === 32) i++;
        const value = scanNumber(bytes, i, decimalCode, state);
        code = state.at < 0 ? 0 : bytes[state.at];
        if (code === sign || code === 10 || code === 13 || state.at === end) {
          i = state.at;
          slot[row] = value;
        } else {
          const from = i;
          while (i < end && bytes[i] !== sign && bytes[i] !== 10 && bytes[i] !== 13 && !(blanks && bytes[i] === 9)) i++;
          const name = plan.names[column] ?? '';
          const place = { row: layout.dataLine + row + skipped, column: column + 1, name };
          slot[row] = cellValue(decode(bytes, from, i), decimal, plan.clocks.includes(column), place);
        }
      } else {
        while (i < end && bytes[i] !== sign && bytes[i] !== 10 && bytes[i] !== 13 && !(blanks && bytes[i] === 9)) i++;
      }
      if (column === last) break;
      code = bytes[i];
      if (i >= end || code === 10 || code === 13) {
        // A last line without its end is a record that was cut off while it was written; anywhere else it is a fault.
        if (lineAt(bytes, lineFrom, 0).next < end) throw shortRow(bytes, lineFrom, layout.dataLine + row + skipped, layout.columns);
        progress.cutOff = true;
        full = false;
      } else {
        i++;
        if (blanks) while (bytes[i] === 32 || bytes[i] === 9) i++;
      }
    }
    while (i < end && bytes[i] !== 10 && bytes[i] !== 13) i++;
    i += bytes[i] === 13 && bytes[i + 1] === 10 ? 2 : 1;
    if (full) row++;
    else progress.skips.push({ row, skipped: ++skipped });
  }
  progress.rows = row;
  return progress;
}

/**
 * Reads the wanted columns of delimited text straight from its bytes into typed arrays, in one pass and without an object per row.
 * Empty lines are stepped over; missing cells become NaN; an incomplete last line is left out with a note.
 * Throws `trace/text-in-number`, `trace/mixed-decimal-signs` and `trace/short-row`, each with its row.
 */
export function parseDelimited(bytes: Uint8Array, layout: Layout, plan: TablePlan): NumberTable {
  const decimal = plan.decimal ?? findDecimal(bytes, layout);
  const capacity = countLines(bytes, layout.dataFrom);
  const columns = plan.wanted.map(() => new Float64Array(capacity));
  const { rows, skips, cutOff } = fill(bytes, layout, plan, decimal, columns);
  const lineOf = (row: number): number => {
    let skipped = 0;
    for (const skip of skips) if (skip.row <= row) skipped = skip.skipped;
    return layout.dataLine + row + skipped;
  };
  return {
    columns: columns.map((column) => column.subarray(0, rows)),
    rows,
    lineOf,
    decimal,
    notes: cutOff ? ['The last line of the file is incomplete and was left out.'] : [],
  };
}
