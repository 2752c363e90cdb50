/** A number found in bytes; `end` is the first byte after it. */
export interface ScannedNumber {
  value: number;
  end: number;
}

const POWERS = Array.from({ length: 23 }, (_, i) => 10 ** i);
const MINUS = 45;
const PLUS = 43;
const POINT = 46;
const COMMA = 44;

function isDigit(byte: number | undefined): boolean {
  return byte !== undefined && byte >= 48 && byte <= 57;
}

function exactly(bytes: Uint8Array, from: number, end: number): number {
  let text = '';
  for (let i = from; i < end; i++) text += String.fromCharCode(bytes[i] ?? 0);
  return Number(text.replace(',', '.'));
}

function exponentEnd(bytes: Uint8Array, at: number): number {
  if (bytes[at] !== 101 && bytes[at] !== 69) return at;
  let i = at + 1;
  if (bytes[i] === MINUS || bytes[i] === PLUS) i++;
  if (!isDigit(bytes[i])) return at;
  while (isDigit(bytes[i])) i++;
  return i;
}

/**
 * Reads a decimal number such as -12.5, +.5, 1e3 (or -12,5) that begins at `from`, in one pass.
 * @returns false when there is none; then `into` is as it was. Correctly rounded: fifteen digits or fewer over a power of ten
 * up to 10^22 is exact in one division (Clinger 1990); longer numbers go through Number().
 */
export function scanNumber(bytes: Uint8Array, from: number, decimal: '.' | ',', into: ScannedNumber): boolean {
  const sign = decimal === '.' ? POINT : COMMA;
  let i = from;
  const isNegative = bytes[i] === MINUS;
  if (isNegative || bytes[i] === PLUS) i++;
  let whole = 0;
  let digits = 0;
  while (isDigit(bytes[i])) {
    whole = whole * 10 + ((bytes[i] as number) - 48);
    digits++;
    i++;
  }
  let places = 0;
  if (bytes[i] === sign && (digits > 0 || isDigit(bytes[i + 1]))) {
    i++;
    while (isDigit(bytes[i])) {
      whole = whole * 10 + ((bytes[i] as number) - 48);
      places++;
      i++;
    }
  }
  if (digits + places === 0) return false;
  const end = exponentEnd(bytes, i);
  const plain = end === i && digits + places <= 15;
  const size = plain ? whole / (POWERS[places] ?? 1) : Math.abs(exactly(bytes, from, end));
  if (!Number.isFinite(size)) return false;
  into.value = isNegative ? -size : size;
  into.end = end;
  return true;
}
