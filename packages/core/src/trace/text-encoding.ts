import { InputError } from '../errors.ts';

/** Bytes in an ASCII-compatible encoding, and how they got there. */
export interface PlainBytes {
  readonly bytes: Uint8Array;
  readonly encoding: 'UTF-8' | 'UTF-16 LE' | 'UTF-16 BE' | 'Latin-1' | 'ASCII';
}

function pushUtf8(out: Uint8Array, at: number, code: number): number {
  if (code < 0x80) {
    out[at] = code;
    return at + 1;
  }
  if (code < 0x800) {
    out[at] = 0xc0 | (code >> 6);
    out[at + 1] = 0x80 | (code & 0x3f);
    return at + 2;
  }
  out[at] = 0xe0 | (code >> 12);
  out[at + 1] = 0x80 | ((code >> 6) & 0x3f);
  out[at + 2] = 0x80 | (code & 0x3f);
  return at + 3;
}

/** UTF-16 to UTF-8, unit by unit: a surrogate pair becomes two three-byte units, which no number or unit name needs. */
function fromUtf16(bytes: Uint8Array, littleEndian: boolean): Uint8Array {
  const out = new Uint8Array(Math.floor(bytes.length / 2) * 3);
  const low = littleEndian ? 0 : 1;
  let at = 0;
  for (let i = 0; i + 1 < bytes.length; i += 2) {
    const code = (bytes[i + low] ?? 0) | ((bytes[i + 1 - low] ?? 0) << 8);
    if (code !== 0xfeff) at = pushUtf8(out, at, code);
  }
  return out.subarray(0, at);
}

function zeroShare(bytes: Uint8Array, parity: number): number {
  const end = Math.min(bytes.length, 400);
  let zeros = 0;
  let count = 0;
  for (let i = parity; i < end; i += 2) {
    count++;
    if (bytes[i] === 0) zeros++;
  }
  return count === 0 ? 0 : zeros / count;
}

/** Length of the valid UTF-8 sequence at i, 0 when there is none. */
function utf8Length(bytes: Uint8Array, i: number): number {
  const lead = bytes[i] ?? 0;
  if (lead < 0x80) return 1;
  const length = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : lead >= 0xc2 ? 2 : 0;
  for (let k = 1; k < length; k++) if (((bytes[i + k] ?? 0) & 0xc0) !== 0x80) return 0;
  return length;
}

function isUtf8(bytes: Uint8Array): boolean {
  for (let i = 0; i < bytes.length; ) {
    if ((bytes[i] as number) < 0x80) {
      i++;
      continue;
    }
    const length = utf8Length(bytes, i);
    if (length === 0) return false;
    i += length;
  }
  return true;
}

/**
 * Finds the encoding and hands back ASCII-compatible bytes: UTF-8 with or without byte order mark, UTF-16 LE or BE
 * (by its mark, or by the zero bytes of plain digits), anything else as Latin-1. Throws `trace/not-text` for binary data.
 */
export function plainBytes(bytes: Uint8Array): PlainBytes {
  const [a, b, c] = bytes;
  if (a === 0xff && b === 0xfe) return { bytes: fromUtf16(bytes, true), encoding: 'UTF-16 LE' };
  if (a === 0xfe && b === 0xff) return { bytes: fromUtf16(bytes, false), encoding: 'UTF-16 BE' };
  if (a === 0xef && b === 0xbb && c === 0xbf) return { bytes: bytes.subarray(3), encoding: 'UTF-8' };
  const even = zeroShare(bytes, 0);
  const odd = zeroShare(bytes, 1);
  if (odd > 0.7 && even < 0.1) return { bytes: fromUtf16(bytes, true), encoding: 'UTF-16 LE' };
  if (even > 0.7 && odd < 0.1) return { bytes: fromUtf16(bytes, false), encoding: 'UTF-16 BE' };
  if (even + odd > 0) {
    throw new InputError(
      'trace/not-text',
      'The file is not plain text: it holds zero bytes. Save the record as delimited text.',
    );
  }
  return { bytes, encoding: isUtf8(bytes.subarray(0, 65536)) ? 'UTF-8' : 'Latin-1' };
}

/** A short stretch of bytes as text: UTF-8 where valid, otherwise Latin-1. */
export function decode(bytes: Uint8Array, from = 0, to = bytes.length): string {
  const part = bytes.subarray(from, to);
  if (part.length < 4096 && part.every((code) => code < 0x80)) return String.fromCharCode(...part);
  if (!isUtf8(part)) return Array.from(part, (code) => String.fromCharCode(code)).join('');
  let text = '';
  for (let i = 0; i < part.length; ) {
    const length = utf8Length(part, i);
    let code = length === 1 ? (part[i] ?? 0) : (part[i] ?? 0) & (0xff >> (length + 1));
    for (let k = 1; k < length; k++) code = (code << 6) | ((part[i + k] ?? 0) & 0x3f);
    text += code > 0x10ffff ? '\ufffd' : String.fromCodePoint(code);
    i += length;
  }
  return text;
}
