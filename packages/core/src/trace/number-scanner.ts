/** Powers of ten that a double holds exactly. */
const POWERS = Float64Array.from([
  1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
  1e21, 1e22,
]);

const MINUS = 45 - 48;
const SMALL_E = 101 - 48;
const CAPITAL_E = 69 - 48;

/** Where the scan stands: `at` is the byte after the number, or -1 when the bytes need the slow road. */
export interface ScanState {
  at: number;
}

/** The power of ten at byte `at`, right after an e; NaN when none stands there. Leaves `state.at` after it. */
function scanExponent(bytes: Uint8Array, at: number, state: ScanState): number {
  let i = at;
  const negative = bytes[i] === 45;
  if (negative || bytes[i] === 43) i++;
  const start = i;
  let value = 0;
  for (; (bytes[i] as number) >= 48 && (bytes[i] as number) <= 57 && i < start + 4; i++)
    value = value * 10 + (bytes[i] as number) - 48;
  state.at = i;
  if (i === start) return Number.NaN;
  return negative ? -value : value;
}

/** As `scanNumber`, for what it leaves: blanks before the number, a plus sign, more than nine digits (the mantissa no longer fits 32 bits), an exponent. */
function scanLongNumber(bytes: Uint8Array, from: number, decimal: number, state: ScanState): number {
  let i = from;
  let mantissa = 0;
  let digits = 0;
  let places = 0;
  let pointSeen = false;
  while (bytes[i] === 32) i++;
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
  state.at = i;
  const marked = bytes[i] === 101 || bytes[i] === 69;
  const power = (marked ? scanExponent(bytes, i + 1, state) : 0) - places;
  const exact = digits > 0 && digits <= 22 && mantissa <= Number.MAX_SAFE_INTEGER && Math.abs(power) <= 22;
  if (!exact) {
    state.at = -1;
    return Number.NaN;
  }
  const value = power < 0 ? mantissa / (POWERS[-power] as number) : mantissa * (POWERS[power] as number);
  return negative ? -value : value;
}

/**
 * Reads a plain decimal number at byte `from`: blanks, sign, digits, one decimal sign (`decimal`, a character code), digits, exponent. The result is the
 * double nearest to the text: mantissa (below 2^53) and power of ten (to 10^22) are both exact, and one division rounds once (W. D.
 * Clinger, How to read floating point numbers accurately, PLDI 1990, the fast case). Anything else (more digits, text) sets
 * `state.at` to -1. The bytes must go on past the number: a line end or a delimiter follows.
 */
export function scanNumber(bytes: Uint8Array, from: number, decimal: number, state: ScanState): number {
  // Codes less that of zero: one unsigned comparison then tells whether it is a digit.
  let i = from;
  let digit = (bytes[i] as number) - 48;
  const negative = digit === MINUS;
  if (negative) digit = (bytes[++i] as number) - 48;
  const start = i;
  // Whole numbers of 32 bits are the quickest; they hold nine digits, and what overflows them is read again.
  let mantissa = 0;
  while (digit >>> 0 < 10) {
    mantissa = (Math.imul(mantissa, 10) + digit) | 0;
    digit = (bytes[++i] as number) - 48;
  }
  let digits = i - start;
  let places = 0;
  if (digit === decimal - 48) {
    const pointAt = i;
    digit = (bytes[++i] as number) - 48;
    while (digit >>> 0 < 10) {
      mantissa = (Math.imul(mantissa, 10) + digit) | 0;
      digit = (bytes[++i] as number) - 48;
    }
    places = i - pointAt - 1;
    digits += places;
  }
  if (digits === 0 || digits > 9 || digit === SMALL_E || digit === CAPITAL_E)
    return scanLongNumber(bytes, from, decimal, state);
  state.at = i;
  const value = mantissa / (POWERS[places] as number);
  return negative ? -value : value;
}
