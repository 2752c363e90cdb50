import { createHash, hash } from 'node:crypto';

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/**
 * JSON with one spelling for each value: keys sorted by UTF-16 code unit, no blanks, numbers and strings as ECMAScript
 * writes them (RFC 8785, JSON Canonicalization Scheme).
 */
export function canonicalJson(value: Json): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`).join(',')}}`;
  }
  if (typeof value === 'number' && !Number.isFinite(value)) throw new TypeError(`${value} has no place in a record`);
  return JSON.stringify(value);
}

/** SHA-256 of text (as UTF-8) or bytes, as 64 hexadecimal digits. */
export function sha256(data: string | Uint8Array): string {
  return typeof data === 'string' ? hash('sha256', data) : createHash('sha256').update(data).digest('hex');
}
