/** Powers of ten that a double holds exactly. */
const POWERS = Float64Array.from([
  1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
]);
/** Below this, ten times the mantissa plus a digit is still an exact integer (2^53 = 9007199254740992). */
const MANTISSA_LIMIT = 900719925474098;

/** Where the scan stands: `at` is the byte after the number, or -1 when the bytes need the slow road. */
export interface ScanState {
  at: number;
}

/**
 * Reads a plain decimal number at byte `from`: sign, digits, one decimal sign (`decimal`, a character code), digits. The result is the double nearest to
 * the text: mantissa and power of ten are both exact, and one division rounds once (W. D. Clinger, How to read floating point numbers
 * accurately, 1990, the fast case). Anything else (exponent, more than 15 digits, text) sets `state.at` to -1.
 */
export function scanNumber(bytes: Uint8Array, from: number, decimal: number, state: ScanState): number {
  let i = from;
  let code = bytes[i] as number;
  const negative = code === 45;
  if (negative || code === 43) code = bytes[++i] as number;
  let mantissa = 0;
  const digitsFrom = i;
  while (code >= 48 && code <= 57) {
    mantissa = mantissa * 10 + (code - 48);
    code = bytes[++i] as number;
  }
  let places = 0;
  let digits = i - digitsFrom;
  if (code === decimal) {
    const pointAt = i;
    code = bytes[++i] as number;
    while (code >= 48 && code <= 57) {
      mantissa = mantissa * 10 + (code - 48);
      code = bytes[++i] as number;
    }
    places = i - pointAt - 1;
    digits += places;
  }
  if (digits === 0 || digits > 22 || (digits > 15 && mantissa > MANTISSA_LIMIT * 10)) {
    state.at = -1;
    return Number.NaN;
  }
  state.at = i;
  const value = places === 0 ? mantissa : mantissa / (POWERS[places] as number);
  return negative ? -value : value;
}
