import type { ColumnQuestion, ColumnsAsked, ColumnTaken, TracePreview } from '@provinghouse/contract';
import {
  type ChosenColumns,
  chooseColumns,
  type HeaderCell,
  type InputError,
  isInputError,
  type ParseOptions,
  type Signal,
  UNITS,
} from '@provinghouse/core';

const signals: readonly Signal[] = ['time', 'force', 'table', 'extension'];

const dimensions = { time: 'time', force: 'force', table: 'length', extension: 'length' } as const;

/** Serves only to look for further questions behind an open one; it never reaches a reading. */
const stopgapUnit = { time: 's', force: 'kN', table: 'mm', extension: 'mm' } as const;

/** Every unit a person may name, by what it measures. */
export const unitsOffered: TracePreview['units'] = {
  time: symbolsOf('time'),
  force: symbolsOf('force'),
  length: symbolsOf('length'),
};

function symbolsOf(dimension: 'time' | 'force' | 'length'): string[] {
  return UNITS.filter(({ unit }) => unit.dimension === dimension).map(({ unit }) => unit.symbol);
}

export interface ColumnsRead {
  readonly taken: TracePreview['taken'];
  /** All that is open at once, so that a person is asked one time only; empty where the file can be read. */
  readonly questions: readonly ColumnQuestion[];
}

/**
 * Which columns a recording would be read by, and what only a person can settle about them: two that could be meant, none named as a force, a
 * unit that is missing, unknown, unfit or means several things.
 * @throws InputError for what no choice of columns mends, such as a column asked for that is not there
 */
export function readColumns(cells: readonly HeaderCell[], asked: ColumnsAsked): ColumnsRead {
  const questions: ColumnQuestion[] = [];
  let columns = askedOptions(asked);
  for (;;) {
    try {
      return { taken: takenOf(chooseColumns(cells, { columns }), questions), questions };
    } catch (error) {
      const question = isInputError(error) ? questionOf(error, cells) : null;
      // A question met twice has not been settled by its stopgap and would be met for ever.
      if (question === null || questions.some((one) => one.signal === question.signal)) throw error;
      questions.push(question);
      columns = {
        ...columns,
        [question.signal]: `${question.columns.at(-1) ?? 1}[${stopgapUnit[question.signal]}]`,
      };
    }
  }
}

/** The columns as the reader of traces takes them. */
export function askedOptions(asked: ColumnsAsked): NonNullable<ParseOptions['columns']> {
  return Object.fromEntries(
    signals.flatMap((signal) => {
      const wanted = asked[signal];
      return wanted === null ? [] : [[signal, wanted]];
    }),
  );
}

function questionOf({ code, context }: InputError, cells: readonly HeaderCell[]): ColumnQuestion | null {
  const signal = code === 'trace/no-force-column' ? 'force' : signals.find((one) => one === context.signal);
  if (signal === undefined) return null;
  const units = unitsOffered[dimensions[signal]];
  if (code === 'trace/no-force-column' || code === 'trace/ambiguous-column')
    return { signal, asks: 'column', code, columns: columnsOf(context.choices, cells), units };
  if (!/^trace\/unit-/.test(code) || typeof context.column !== 'number') return null;
  return { signal, asks: 'unit', code, columns: [context.column], units };
}

function columnsOf(choices: unknown, cells: readonly HeaderCell[]): number[] {
  const all = cells.map(({ index }) => index + 1);
  if (!Array.isArray(choices)) return all;
  const named = choices.flatMap((choice: unknown) => {
    const column: unknown = typeof choice === 'object' && choice !== null ? Reflect.get(choice, 'column') : null;
    return typeof column === 'number' ? [column] : [];
  });
  return named.length === 0 ? all : named;
}

function takenOf(chosen: ChosenColumns, questions: readonly ColumnQuestion[]): TracePreview['taken'] {
  const taken = (signal: Signal): ColumnTaken | null => {
    const column = chosen[signal];
    if (column === null || questions.some((one) => one.signal === signal)) return null;
    return { column: column.index + 1, name: column.name, unit: column.unit.symbol, because: column.because };
  };
  return { time: taken('time'), force: taken('force'), table: taken('table'), extension: taken('extension') };
}

/** Whether the header of one file is that of another: the same columns with the same units, in the same places. */
export function isSameHeader(a: readonly HeaderCell[], b: readonly HeaderCell[]): boolean {
  return a.length === b.length && a.every((cell, at) => cell.name === b[at]?.name && cell.unitText === b[at]?.unitText);
}
