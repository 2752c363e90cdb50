/** Powers of ten that a double holds exactly. */
const POWERS = Float64Array.from([
  1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
  1e21, 1e22,
]);

/** Where the scan stands: `at` is the byte after the number, or -1 when the bytes need the slow road. */
export interface ScanState {
  at: number;
}

/** As `scanNumber`, for numbers of more than nine digits: the mantissa no longer fits 32 bits. */
function scanLongNumber(bytes: Uint8Array, from: number, decimal: number, state: ScanState): number {
  let i = from;
  let mantissa = 0;
  let digits = 0;
  let places = 0;
  let pointSeen = false;
  const negative = bytes[i] === 45;
  if (negative || bytes[i] === 43) i++;
  for (; ; i++) {
    const code = bytes[i] as number;
    if (code >= 48 && code <= 57) {
      mantissa = mantissa * 10 + (code - 48);
      digits++;
      if (pointSeen) places++;
    } else if (code === decimal && !pointSeen) pointSeen = true;
    else break;
  }
  const exact = digits > 0 && digits <= 22 && mantissa <= Number.MAX_SAFE_INTEGER;
  state.at = exact ? i : -1;
  const value = mantissa / (POWERS[places] ?? 1);
  return negative ? -value : value;
}

/**
 * Reads a plain decimal number at byte `from`: sign, digits, one decimal sign (`decimal`, a character code), digits. The result is the
 * double nearest to the text: mantissa (below 2^53) and power of ten (to 10^22) are both exact, and one division rounds once (W. D.
 * Clinger, How to read floating point numbers accurately, PLDI 1990, the fast case). Anything else (exponent, more digits, text) sets
 * `state.at` to -1. The bytes must go on past the number: a line end or a delimiter follows.
 */
export function scanNumber(bytes: Uint8Array, from: number, decimal: number, state: ScanState): number {
  let i = from;
  let code = bytes[i] as number;
  const negative = code === 45;
  if (negative) code = bytes[++i] as number;
  const start = i;
  // Whole numbers of 32 bits are the quickest; they hold nine digits, and what overflows them is read again.
  let mantissa = 0;
  while (code >= 48 && code <= 57) {
    mantissa = (Math.imul(mantissa, 10) + (code - 48)) | 0;
    code = bytes[++i] as number;
  }
  let digits = i - start;
  let places = 0;
  if (code === decimal) {
    const pointAt = i;
    code = bytes[++i] as number;
    while (code >= 48 && code <= 57) {
      mantissa = (Math.imul(mantissa, 10) + (code - 48)) | 0;
      code = bytes[++i] as number;
    }
    places = i - pointAt - 1;
    digits += places;
  }
  if (digits === 0 || digits > 9) return scanLongNumber(bytes, from, decimal, state);
  state.at = i;
  const value = mantissa / (POWERS[places] as number);
  return negative ? -value : value;
}
