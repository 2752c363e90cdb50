/** Bytes that are kept in several parts, the last one short; no two parts are alike. */
export function longBytes(size = 9_000_001): Uint8Array {
  const bytes = new Uint8Array(size);
  for (let at = 0; at < size; at += 1) bytes[at] = (at + (at >> 16)) % 251;
  return bytes;
}
