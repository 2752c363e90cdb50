import { type PastedTable, type Row, readPasted, rowFaults, type SheetFault } from '@provinghouse/contract';
import type { GaugingPlace, ReadingQuestion } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { type PieceAtDesk, readingsOfProduct, toInput } from './gauging-desk.ts';
import { gaugingId, type ReadingSeen } from './merged-readings.ts';
import { readingText } from './place-words.ts';
import { questionsOf } from './typed-reading.ts';

const words = text.gaugingDesk.paste;

/** What a pasted table says, and what is asked about each of its readings. */
export interface PastedReadings {
  readonly table: PastedTable;
  readonly faults: readonly SheetFault[];
  /** Empty while there is any fault. */
  readonly rows: readonly Row<'gauging'>[];
  readonly questions: ReadonlyMap<Row<'gauging'>, readonly ReadingQuestion[]>;
}

/** What the page knows beside the table. */
export interface PasteInputs {
  readonly pieces: readonly PieceAtDesk[];
  readonly readings: readonly ReadingSeen[];
  readonly known: ReadonlySet<string>;
  readonly piece: string;
  readonly instrument: string;
  readonly by: string;
  readonly read_at: string;
}

/** Reads a pasted table against what the campaign holds: every fault with its row and column, nothing guessed. */
export function pastedReadings(pasted: string, inputs: PasteInputs): PastedReadings {
  const { piece, instrument, by, read_at } = inputs;
  const defaults = { piece, instrument, by, read_at, direction: 1, repeat: 1, over_links: null };
  const table = readPasted('gauging', pasted, { defaults });
  const isWhole = table.faults.length === 0;
  // A row without faults has every cell that its table asks for.
  const whole = isWhole ? table.rows.map(({ row, cells }) => ({ row, cells: cells as unknown as Row<'gauging'> })) : [];
  const faults = [...table.faults, ...whole.flatMap((one) => againstCampaign(one, inputs))];
  const rows = faults.length > 0 ? [] : whole.map(({ cells }) => cells);
  return { table, faults, rows, questions: questionsAbout(rows, inputs) };
}

function againstCampaign(
  { row, cells }: { readonly row: number; readonly cells: Row<'gauging'> },
  { pieces, readings, known }: PasteInputs,
): SheetFault[] {
  const taken = readings.find(({ id }) => id === gaugingId(cells));
  const fault = (column: string | null, said: string) => [{ row, column, fault: said }];
  return [
    ...rowFaults('gauging', cells).flatMap((found) => fault(found.column, found.fault)),
    ...(pieces.some(({ piece }) => piece === cells.piece) ? [] : fault('piece', words.unknownPiece(cells.piece))),
    ...(known.has(cells.instrument) ? [] : fault('instrument', words.unknownInstrument(cells.instrument))),
    ...(taken === undefined ? [] : fault(cells.quantity, words.taken(readingText(taken.row.value_mm)))),
  ];
}

/** Each reading is asked about as if it were typed after those above it. */
function questionsAbout(rows: readonly Row<'gauging'>[], { pieces, by }: PasteInputs): PastedReadings['questions'] {
  const found = new Map<Row<'gauging'>, readonly ReadingQuestion[]>();
  const before = new Map<string, ReadingSeen[]>();
  for (const row of rows) {
    const piece = pieces.find((one) => one.piece === row.piece);
    if (piece === undefined) continue;
    const above = before.get(row.piece) ?? [];
    const place: GaugingPlace = toInput(row);
    const questions = questionsOf(row.value_mm, {
      place,
      piece: { ...piece, readings: [...piece.readings, ...above] },
      ofProduct: readingsOfProduct(pieces, piece),
      instrument: null,
      by,
    });
    if (questions.length > 0) found.set(row, questions);
    before.set(row.piece, [...above, { id: gaugingId(row), row, state: 'on the way', held: null }]);
  }
  return found;
}
