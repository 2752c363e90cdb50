import { crc32 } from 'node:zlib';

/**
 * One frame on disc, little-endian: magic, payload length, sequence, salt of the spool, kind, three zeros, time (float64, seconds since the
 * record began); payload; CRC-32 of all before it. The salt keeps bytes of another spool from passing for a frame of this one.
 */
export interface SpoolFrame {
  readonly sequence: number;
  readonly salt: number;
  readonly kind: number;
  readonly time_s: number;
  readonly payload: Uint8Array;
}

/** "PHS1" */
export const FRAME_MAGIC = 0x31534850;
const HEAD = 28;
const TAIL = 4;
/** Longest payload: anything larger in a length field is damage. */
export const LONGEST_PAYLOAD = 1 << 20;

/** The bytes of a frame. */
export function frameBytes({ sequence, salt, kind, time_s, payload }: SpoolFrame): Uint8Array {
  const bytes = new Uint8Array(HEAD + payload.length + TAIL);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, FRAME_MAGIC, true);
  view.setUint32(4, payload.length, true);
  view.setUint32(8, sequence, true);
  view.setUint32(12, salt, true);
  view.setUint32(16, kind, true);
  view.setFloat64(20, time_s, true);
  bytes.set(payload, HEAD);
  view.setUint32(HEAD + payload.length, crc32(bytes.subarray(0, HEAD + payload.length)), true);
  return bytes;
}

/** A frame that begins at `from`; 'short' when more bytes could complete one, 'no frame' when none can begin here. */
export function frameAt(
  bytes: Uint8Array,
  from: number,
): { readonly frame: SpoolFrame; readonly end: number } | 'short' | 'no frame' {
  const view = new DataView(bytes.buffer, bytes.byteOffset + from, bytes.length - from);
  if (view.byteLength < 8) return 'short';
  if (view.getUint32(0, true) !== FRAME_MAGIC) return 'no frame';
  const length = view.getUint32(4, true);
  if (length > LONGEST_PAYLOAD) return 'no frame';
  const size = HEAD + length + TAIL;
  if (view.byteLength < size) return 'short';
  if (view.getUint32(HEAD + length, true) !== crc32(bytes.subarray(from, from + HEAD + length))) return 'no frame';
  const frame = {
    sequence: view.getUint32(8, true),
    salt: view.getUint32(12, true),
    kind: view.getUint8(16),
    time_s: view.getFloat64(20, true),
    payload: bytes.subarray(from + HEAD, from + HEAD + length),
  };
  return { frame, end: from + size };
}
