/** How a number lies in 16-bit registers. */
export type RegisterType = 'int16' | 'uint16' | 'int32' | 'uint32' | 'float32';

/** Which of two registers comes first; within a register the high byte always does (Modbus application protocol 4.2). */
export type WordOrder = 'high first' | 'low first';

/** Registers a type takes. */
export function registerWidth(type: RegisterType): 1 | 2 {
  return type === 'int16' || type === 'uint16' ? 1 : 2;
}

/**
 * The number held by one or two registers, big-endian bytes as on the wire.
 * @returns null when a float32 is not a finite number or the bytes are too few
 */
export function registerValue(bytes: Uint8Array, from: number, type: RegisterType, order: WordOrder): number | null {
  const width = registerWidth(type) * 2;
  if (from < 0 || from + width > bytes.length) return null;
  // Not slice(): a Buffer would lend its own memory.
  const ordered = new Uint8Array(bytes.subarray(from, from + width));
  if (width === 4 && order === 'low first') {
    ordered.copyWithin(0, 2);
    ordered.set(bytes.subarray(from, from + 2), 2);
  }
  const view = new DataView(ordered.buffer, ordered.byteOffset, width);
  if (type === 'int16') return view.getInt16(0);
  if (type === 'uint16') return view.getUint16(0);
  if (type === 'int32') return view.getInt32(0);
  if (type === 'uint32') return view.getUint32(0);
  const value = view.getFloat32(0);
  return Number.isFinite(value) ? value : null;
}
