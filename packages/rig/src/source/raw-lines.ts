import type { RawLine } from '@provinghouse/contract';
import { printable } from './printable.ts';
import type { RawPiece } from './source.ts';

/** The last lines as they came. */
export interface RawLines {
  push(bytes: Uint8Array, at_s: number, piece?: RawPiece): void;
  /** Oldest first; what stands after the last line end comes last. */
  lines(): RawLine[];
}

/** Longer stretches without a line end are broken, so that a wire that sends no text is seen as well. */
const WIDEST = 96;

function hexOf(bytes: Uint8Array): string {
  const shown = Array.from(bytes.subarray(0, WIDEST / 3), (byte) => byte.toString(16).padStart(2, '0')).join(' ');
  return bytes.length > WIDEST / 3 ? `${shown} ...` : shown;
}

/** Keeps the last few lines of a stream, or the last few pieces of a wire that sends pieces. */
export function rawLines(most = 30): RawLines {
  let kept: RawLine[] = [];
  let rest: number[] = [];
  let rest_s = 0;
  const textOf = (bytes: readonly number[]) => printable(Uint8Array.from(bytes), WIDEST);
  function keep(line: RawLine): void {
    kept.push(line);
    if (kept.length > 2 * most) kept = kept.slice(-most);
  }
  function cut(): void {
    if (rest.length > 0) keep({ at_s: rest_s, place: null, text: textOf(rest) });
    rest = [];
  }
  return {
    push(bytes, at_s, piece) {
      if (piece) {
        keep({ at_s, place: piece.place, text: piece.isText ? printable(bytes, WIDEST) : hexOf(bytes) });
        return;
      }
      for (const byte of bytes) {
        if (rest.length === 0) rest_s = at_s;
        if (byte === 10 || byte === 13) cut();
        else rest.push(byte);
        if (rest.length >= WIDEST) cut();
      }
    },
    lines() {
      const open = rest.length > 0 ? [{ at_s: rest_s, place: null, text: textOf(rest) }] : [];
      return [...kept, ...open].slice(-most);
    },
  };
}
