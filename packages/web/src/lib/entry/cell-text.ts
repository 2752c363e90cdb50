import { type CellReading, type CellValue, type Field, readCell, writeCell } from '@provinghouse/contract';
import { readDay, readTime, timeText } from './bench-clock.ts';

/**
 * Reads what a person typed into a field of a table: as a cell of a package, but with a decimal comma where numbers are meant, and days
 * and times as a person writes them, by the clock of this bench.
 */
export function readTyped(field: Field, typed: string): CellReading {
  if (typed.trim() !== '' && field.type === 'date') return readDay(typed);
  if (typed.trim() !== '' && field.type === 'datetime') return readTime(typed);
  const isNumber = field.type === 'number' || field.type === 'integer';
  return readCell(field, isNumber ? typed.trim().replace(/^([+-]?\d+),(\d+)$/, '$1.$2') : typed);
}

/** How a cell stands in a form. */
export function typedText(field: Field | undefined, value: CellValue | undefined): string {
  const isInstant = field?.type === 'datetime' && typeof value === 'string';
  return isInstant ? timeText(value) : writeCell(value ?? null);
}
