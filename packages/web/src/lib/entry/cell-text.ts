import { type CellReading, type CellValue, type Field, readCell, writeCell } from '@provinghouse/contract';

/** Reads what a person typed into a field of a table: as a cell of a package, but with a decimal comma where numbers are meant. */
export function readTyped(field: Field, typed: string): CellReading {
  const isNumber = field.type === 'number' || field.type === 'integer';
  return readCell(field, isNumber ? typed.trim().replace(/^([+-]?\d+),(\d+)$/, '$1.$2') : typed);
}

/** How a cell stands in a form. */
export function typedText(value: CellValue): string {
  return writeCell(value);
}
