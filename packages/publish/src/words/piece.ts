import type { PieceFinding } from '@provinghouse/contract';
import type { BreakReading, Verdict } from '@provinghouse/core';
import { joined, literal, type Typst } from '../typst/escape.ts';
import { absent } from './number.ts';

/** The verdict as its shape and its word. */
export function verdictMark(verdict: Verdict): Typst {
  return `verdict(${literal(verdict)})`;
}

/** User text, or a dash for nothing recorded. */
export function cell(value: string | null): Typst {
  return literal(value === null || value.trim() === '' ? absent : value);
}

function wordsOf(reading: BreakReading): string {
  return reading.link === 0 ? `gripped link: ${reading.mode}` : `${reading.position}: ${reading.mode}`;
}

/** Where and how the piece parted, each distinct reading once; examiners' disagreement said in words. */
export function breakWords(piece: PieceFinding): Typst {
  const readings = [...new Set(piece.breaks.map(wordsOf))];
  if (readings.length === 0) return literal(absent);
  const words = literal(readings.join(' / '));
  return piece.examinersDiffer ? joined([words, 'linebreak()', `quiet("examiners differ")`]) : words;
}

/** The greatest force a pull shows, used or not; null where it shows none. */
export function forceShown(piece: PieceFinding): number | null {
  return piece.pull?.maximum?.value ?? piece.pull?.reading?.maximumForce_kN ?? null;
}
