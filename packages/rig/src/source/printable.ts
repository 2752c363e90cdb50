/** Bytes as a person can read them: plain ASCII as it is, everything else as \xNN; cut after `most` bytes. */
export function printable(bytes: Uint8Array, most = 60): string {
  let text = '';
  for (const byte of bytes.subarray(0, most))
    text += byte >= 32 && byte < 127 ? String.fromCharCode(byte) : `\\x${byte.toString(16).padStart(2, '0')}`;
  return bytes.length > most ? `${text}...` : text;
}

/** Share of bytes that are neither plain ASCII nor a line end or tab. */
export function garbledShare(bytes: Uint8Array): number {
  if (bytes.length === 0) return 0;
  let garbled = 0;
  for (const byte of bytes) if ((byte < 32 && byte !== 9 && byte !== 10 && byte !== 13) || byte > 126) garbled++;
  return garbled / bytes.length;
}
