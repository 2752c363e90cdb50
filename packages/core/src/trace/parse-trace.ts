import { InputError } from '../errors.ts';
import type { Unit } from '../units/unit.ts';
import type { ChosenColumn, ChosenColumns } from './column-choice.ts';
import { chooseColumns } from './column-choice.ts';
import type { ParseOptions, Signal } from './options.ts';
import type { NumberTable } from './parse-delimited.ts';
import { parseDelimited } from './parse-delimited.ts';
import type { ColumnChoice } from './reading.ts';
import type { TraceSignals } from './signals.ts';
import { readTraceHeader } from './trace-header.ts';

const SIGNALS: readonly Signal[] = ['time', 'force', 'table', 'extension'];

function inBenchUnits(values: Float64Array, unit: Unit): Float64Array {
  const { multiply, divide } = unit;
  if (multiply === 1 && divide === 1) return values;
  return values.map((value) => (value * multiply) / divide);
}

function rowError(code: string, row: number, message: string): InputError {
  return new InputError(code, `Row ${row}: ${message}`, { row });
}

/** Rows that have a force and a time; null when all have. */
function completeRows(force: Float64Array, time: Float64Array | null): Int32Array | null {
  let missing = 0;
  for (let i = 0; i < force.length; i++) if (Number.isNaN(force[i]) || (time && Number.isNaN(time[i]))) missing++;
  if (missing === 0) return null;
  const kept = new Int32Array(force.length - missing);
  let at = 0;
  for (let i = 0; i < force.length; i++)
    if (!Number.isNaN(force[i]) && !(time && Number.isNaN(time[i]))) kept[at++] = i;
  return kept;
}

function take(values: Float64Array, rows: Int32Array | null): Float64Array {
  return rows === null ? values : Float64Array.from(rows, (row) => values[row] ?? Number.NaN);
}

/** The first place whose value is below the one before; the number of values when there is none. */
function firstFall(values: Float64Array): number {
  let i = 1;
  while (i < values.length && !((values[i] as number) < (values[i - 1] as number))) i++;
  return i;
}

function checkTime(time: Float64Array, rowNumber: (i: number) => number, unit: Unit): void {
  const i = firstFall(time);
  if (i === time.length) return;
  const cure = unit.clock
    ? 'If the pull ran past midnight, add 24 hours to the later times.'
    : 'Put the rows in order or take out the wrong one.';
  throw rowError(
    'trace/time-backwards',
    rowNumber(i),
    `the time runs backwards, from ${time[i - 1]} s to ${time[i]} s. ${cure}`,
  );
}

function choice(column: ChosenColumn | null): ColumnChoice | null {
  return column && { name: column.name, unit: column.unit.symbol, because: column.because };
}

function checkSome(values: Float64Array, what: string): void {
  if (values.every((value) => Number.isNaN(value))) {
    throw new InputError(
      'trace/all-missing',
      `Not one reading of the ${what} is a number: every cell is empty or nan.`,
      { signal: what },
    );
  }
}

function assemble(table: NumberTable, chosen: ChosenColumns, wanted: readonly number[]): TraceSignals {
  const raw = (signal: Signal): Float64Array | null => {
    const column = chosen[signal];
    const values = column ? table.columns[wanted.indexOf(column.index)] : undefined;
    if (!column || !values) return null;
    checkSome(values, signal);
    return values;
  };
  const force = raw('force') as Float64Array; // the choice of columns always ends with a force
  const time = raw('time');
  const rows = table.hasGaps ? completeRows(force, time) : null;
  const left = force.length - (rows?.length ?? force.length);
  const bench = (signal: Signal): Float64Array | null => {
    const values = raw(signal);
    return values && inBenchUnits(take(values, rows), (chosen[signal] as ChosenColumn).unit);
  };
  const time_s = bench('time');
  const count = rows?.length ?? force.length;
  if (count < 2) {
    throw new InputError(
      'trace/one-row',
      `The file holds ${count} complete row${count === 1 ? '' : 's'} of readings: a pull needs at least two.`,
    );
  }
  if (time_s) checkTime(time_s, (i) => table.lineOf(rows?.[i] ?? i), (chosen.time as ChosenColumn).unit);
  return {
    time_s,
    force_kN: bench('force') as Float64Array,
    table_mm: bench('table'),
    extension_mm: bench('extension'),
    columns: {
      time: choice(chosen.time),
      force: choice(chosen.force) as ColumnChoice,
      table: choice(chosen.table),
      extension: choice(chosen.extension),
    },
    notes: [...table.notes, ...(left > 0 ? [`${left} rows without a force or a time were left out.`] : [])],
  };
}

/**
 * Parses a recording in plain delimited text into signals in bench units (s, kN, mm), with the columns taken and why.
 * Encoding, delimiter, decimal sign, preamble, names and units are found from the text; see `chooseColumns` for what stops it.
 * A clock time counts from midnight. Missing readings of table or extension are NaN; rows without force or time are left out and counted.
 */
export function parseTrace(bytes: Uint8Array, options: ParseOptions = {}): TraceSignals {
  const { plain, layout, cells } = readTraceHeader(bytes, options.decimal);
  const chosen = chooseColumns(cells, options);
  const picked = SIGNALS.map((signal) => chosen[signal]).filter((column) => column !== null);
  const wanted = [...new Set(picked.map((column) => column.index))].sort((a, b) => a - b);
  const table = parseDelimited(plain, layout, {
    wanted,
    names: cells.map((cell) => cell.name),
    clocks: picked.filter((column) => column.unit.clock).map((column) => column.index),
    decimal: options.decimal,
  });
  return assemble(table, chosen, wanted);
}
