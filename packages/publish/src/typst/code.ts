import { literal, type Typst } from './escape.ts';
import type { Column } from './table.ts';

/** Codes up to this long stand on one line of a table. */
const shortCode = 16;

/** A code of a product, sample or piece: strong; a long one may end a line after its signs and within its runs. */
export function codeName(code: string): Typst {
  return `strong(${codeText(code)})`;
}

/** The same in the weight of the text around it. */
export function codeText(code: string): Typst {
  if (code.length <= shortCode) return literal(code);
  return literal(code)
    .replaceAll(/([-_./])(?=.{2})/g, '$1\u200b')
    .replaceAll(/[^-_./"\\\u200b]{10}(?=[^-_./"\\\u200b]{3})/g, '$&\u200b');
}

/** A column of codes: as wide as they are, or narrow with lines broken when one of them is long. */
export function codeColumn(heading: string, codes: readonly string[]): Column {
  return codes.some((code) => code.length > shortCode) ? { heading, width: '27mm' } : { heading };
}
