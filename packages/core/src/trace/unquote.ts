const QUOTE = 34;
const TAB = 9;
/** Quotes that mean anything stand in the names or the first rows. */
const SEARCHED = 65536;

function delimiterBesideQuotes(bytes: Uint8Array): number {
  const counts = new Map<number, number>();
  const end = Math.min(bytes.length, SEARCHED);
  for (let i = 0; i + 1 < end; i++) {
    const next = bytes[i + 1] ?? 0;
    if (bytes[i] === QUOTE && (next === 44 || next === 59 || next === TAB))
      counts.set(next, (counts.get(next) ?? 0) + 1);
  }
  let best = TAB;
  let most = 0;
  for (const [code, count] of counts) {
    if (count > most) {
      best = code;
      most = count;
    }
  }
  return best;
}

/**
 * Text with quoted cells becomes text without: quotes go, and the delimiter outside quotes becomes a tab, so that a comma inside
 * quotes can be a decimal sign. Text without a quote in its first 64 KiB comes back as it is.
 */
export function unquote(bytes: Uint8Array): Uint8Array {
  if (!bytes.subarray(0, SEARCHED).includes(QUOTE)) return bytes;
  const delimiter = delimiterBesideQuotes(bytes);
  const out = new Uint8Array(bytes.length);
  let at = 0;
  let inside = false;
  for (let i = 0; i < bytes.length; i++) {
    const code = bytes[i] ?? 0;
    if (code === 10 || code === 13) inside = false;
    if (code === QUOTE) inside = !inside;
    else out[at++] = code === delimiter && !inside ? TAB : code;
  }
  return out.subarray(0, at);
}
