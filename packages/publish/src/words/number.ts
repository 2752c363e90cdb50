import { type MeasuredValue, roundByUncertainty } from '@provinghouse/core';

/** What stands where a number is missing. */
export const absent = '–';

/** A typographic minus sign, so that a number never breaks off its sign or reads as a hyphen. */
function signed(text: string): string {
  return text.replace('-', '\u2212');
}

/** A number with a fixed count of decimals; null is a dash, never a zero. */
export function decimals(value: number | null, places: number): string {
  if (value === null) return absent;
  const text = value.toFixed(places);
  return signed(/[1-9]/.test(text) ? text : text.replace('-', ''));
}

/** A published or keyed number as it was written: up to eight significant digits, no padding. */
export function asWritten(value: number | null): string {
  return value === null ? absent : signed(String(Number(value.toPrecision(8))));
}

/** A number whose uncertainty is unknown, to `digits` significant digits (three unless told). */
export function significant(value: number | null, digits = 3): string {
  if (value === null) return absent;
  if (value === 0) return '0';
  const exponent = Math.floor(Math.log10(Math.abs(Number(value.toPrecision(digits)))));
  const places = Math.min(Math.max(digits - 1 - exponent, 0), 20);
  return signed(value.toFixed(places));
}

/** A value rounded by its uncertainty, and the uncertainty; without one, three or four digits and null. */
export function rounded(
  value: number,
  uncertainty: number | null,
): { readonly value: string; readonly uncertainty: string | null } {
  if (uncertainty === null || !(uncertainty > 0)) return { value: significant(value, 4), uncertainty: null };
  const result = roundByUncertainty({ value, uncertainty });
  return { value: signed(result.value), uncertainty: result.uncertainty };
}

/** `33.12 ± 0.21`, `at least 31.9 ± 0.3`, or `33.12, U not known`; a dash for nothing measured. */
export function measured(value: MeasuredValue | null): string {
  if (value === null) return absent;
  const text = rounded(value.value, value.expandedUncertainty);
  const body = text.uncertainty === null ? `${text.value}, U not known` : `${text.value} ± ${text.uncertainty}`;
  return value.isAtLeast ? `at least ${body}` : body;
}

/** `limit` shown to the last place of the uncertainty it was moved by, so that it can be compared with the value. */
export function besideUncertainty(limit: number | null, uncertainty: number | null): string {
  if (limit === null) return absent;
  return uncertainty !== null && uncertainty > 0 ? rounded(limit, uncertainty).value : asWritten(limit);
}
