import { InputError } from '../errors.ts';
import { clockSeconds } from '../units/parse-unit.ts';
import { isMissingCell } from './layout.ts';

/** Where a cell stands, for messages. */
export interface CellPlace {
  readonly row: number;
  readonly column: number;
  readonly name: string;
}

function mixedDecimals(text: string, place: CellPlace): InputError {
  return new InputError(
    'trace/mixed-decimal-signs',
    `Row ${place.row}, column ${place.column} ("${place.name}"): "${text}" has another decimal sign than the rest of the file, ` +
      'or a sign between thousands. Write all numbers with one decimal sign and nothing between thousands.',
    { ...place, text },
  );
}

function notANumber(text: string, place: CellPlace): InputError {
  return new InputError(
    'trace/text-in-number',
    `Row ${place.row}, column ${place.column} ("${place.name}"): "${text}" is not a number. Correct it, or leave the cell empty when the reading is missing.`,
    { ...place, text },
  );
}

/**
 * The value of a cell that the quick scanner would not take: exponents, many digits, clock times (as seconds), missing readings
 * (empty, nan, n/a, dashes: NaN). Throws `trace/mixed-decimal-signs` or `trace/text-in-number` with row and column.
 */
export function cellValue(text: string, decimal: '.' | ',', clock: boolean, place: CellPlace): number {
  const trimmed = text.replace(/^[\s\u00a0]+|[\s\u00a0]+$/g, '').replace('−', '-');
  if (isMissingCell(trimmed)) return Number.NaN;
  if (trimmed.includes(':')) {
    const seconds = clock ? clockSeconds(trimmed) : null;
    if (seconds === null) throw notANumber(trimmed, place);
    return seconds;
  }
  const other = decimal === '.' ? ',' : '.';
  if (/^[+-]?[\d.,]+([eE][+-]?\d+)?$/.test(trimmed) && (trimmed.includes(other) || trimmed.split(decimal).length > 2)) {
    throw mixedDecimals(trimmed, place);
  }
  if (!/^[+-]?(\d+[.,]?\d*|[.,]\d+)([eE][+-]?\d+)?$/.test(trimmed) || clock) throw notANumber(trimmed, place);
  return Number(trimmed.replace(',', '.'));
}
