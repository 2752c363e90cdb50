/** A number to so many significant digits as plain decimals, with a typographic minus sign. */
export function numberWords(value: number, digits = 3): string {
  if (value === 0) return '0';
  const exponent = Math.floor(Math.log10(Math.abs(Number(value.toPrecision(digits)))));
  return minus(value.toFixed(Math.min(Math.max(digits - 1 - exponent, 0), 20)));
}

/** A published or keyed number as it was written. */
export function asWritten(value: number): string {
  return minus(String(Number(value.toPrecision(8))));
}

/** A share as per cent, as it was asked for: `95 %`. */
export function percentWords(share: number): string {
  return `${Number((100 * share).toPrecision(4))} %`;
}

/** Values that stand as ticks on one axis: as many decimals as tell them apart. */
export function tickWords(value: number): string {
  return minus(String(Number(value.toPrecision(6))));
}

/** With a typographic minus sign, and none before a zero. */
export function minus(text: string): string {
  return /[1-9]/.test(text) ? text.replace('-', '−') : text.replace('-', '');
}
