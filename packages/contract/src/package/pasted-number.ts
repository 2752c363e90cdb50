import { readTypedNumber } from '@provinghouse/core';

export type DecimalSign = '.' | ',';

/**
 * The decimal sign that the numbers of a pasted table show: a spreadsheet writes all of them alike. Null where none of them
 * tells (whole numbers, or `1,234` alone), `mixed` where they contradict each other.
 */
export function decimalSignOf(cells: readonly string[]): DecimalSign | 'mixed' | null {
  const signs = new Set(cells.flatMap((cell) => signOf(cell) ?? []));
  if (signs.size > 1) return 'mixed';
  return [...signs][0] ?? null;
}

/** What one number says of the decimal sign: `8,12` and `1.234,5` a comma; `8.12`, `1,234.5` and `1,234,567` a point. */
function signOf(cell: string): DecimalSign | null {
  const digits = /[\d.,]*\d[\d.,]*/.exec(cell)?.[0] ?? '';
  const points = digits.split('.').length - 1;
  const commas = digits.split(',').length - 1;
  if (points > 0 && commas > 0) return digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
  if (points > 1) return ',';
  if (commas > 1) return '.';
  if (commas === 1) return /^[1-9]\d{0,2},\d{3}$/.test(digits) ? null : ',';
  // A point before three digits may stand between thousands where the others show decimal commas.
  return points === 1 && !/^[1-9]\d{0,2}\.\d{3}$/.test(digits) ? '.' : null;
}

export type CellNumber = { readonly ok: true; readonly cell: string } | { readonly ok: false; readonly fault: string };

/** A number cell as the tables write it: decimal point, nothing between thousands, no unit. */
export function plainNumberCell(
  cell: string,
  { decimal, unit }: { readonly decimal: DecimalSign | null; readonly unit: string | null },
): CellNumber {
  const read = readTypedNumber(cell, { unit, decimal: decimal ?? undefined });
  return read.ok ? { ok: true, cell: String(read.value) } : { ok: false, fault: read.fault };
}
