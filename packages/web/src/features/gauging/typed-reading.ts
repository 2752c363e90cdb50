import {
  expectedInterval,
  type GaugingInput,
  type GaugingInstrument,
  type GaugingPlace,
  type ReadingQuestion,
  readingQuestions,
  readTypedNumber,
} from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { type PieceAtDesk, toInput } from './gauging-desk.ts';

/** What a typed reading is held against. */
export interface TypedAgainst {
  readonly place: GaugingPlace;
  readonly piece: PieceAtDesk;
  readonly ofProduct: readonly GaugingInput[];
  readonly instrument: GaugingInstrument | null;
  readonly by: string;
}

/** A typed reading: its value with what is asked and noted about it, or why it is none. */
export type TypedReading =
  | {
      readonly ok: true;
      readonly value_mm: number;
      readonly questions: readonly ReadingQuestion[];
      /** What was read otherwise than it stands there: a unit, a decimal comma. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly fault: string };

/** How far from what is expected a number may lie and still settle what a comma between digits means. */
const reach = 3;

/** Reads what stands in the field, as a person or a calliper typed it. */
export function readReading(typed: string, against: TypedAgainst): TypedReading {
  const words = text.gaugingDesk.now;
  const { place, piece } = against;
  const nominalSize_mm = piece.product?.nominal_size_mm ?? null;
  const expected =
    nominalSize_mm === null
      ? null
      : expectedInterval(place.quantity, { nominalSize_mm, limits: piece.limits, overLinks: place.overLinks });
  const within =
    expected === null ? undefined : { least: expected.lower_mm / reach, greatest: expected.upper_mm * reach };
  const number = readTypedNumber(typed, { unit: 'mm', within });
  if (!number.ok) return { ok: false, fault: number.code === 'empty' ? words.empty : number.fault };
  if (number.value <= 0) return { ok: false, fault: words.notLength };
  return { ok: true, value_mm: number.value, questions: questionsOf(number.value, against), notes: number.notes };
}

/** What is asked about a value at a place; nothing where the size of the chain is not known. */
export function questionsOf(value_mm: number, against: TypedAgainst): readonly ReadingQuestion[] {
  const { place, piece, ofProduct, instrument, by } = against;
  if (piece.product === null) return [];
  return readingQuestions({
    reading: { ...place, value_mm, instrument: instrument?.instrument ?? '', by },
    nominalSize_mm: piece.product.nominal_size_mm,
    limits: piece.limits,
    earlier: piece.readings.map(({ row }) => toInput(row)),
    ofProduct,
    instrument: instrument ?? undefined,
    zincOnBar_mm: piece.zincOnBar_mm,
  });
}
