import type { Row, RowHeld } from '@provinghouse/contract';

/** A pull with what stands of its break, as one person may know of it. */
export interface PulledPiece {
  readonly pull: Row<'pulls'>;
  readonly piece: Row<'pieces'>;
  readonly mine: readonly RowHeld<'breaks'>[];
  /** Everybody else who has read it; what they read is not told here. */
  readonly others: readonly string[];
}

interface PulledRows {
  readonly pulls: readonly RowHeld<'pulls'>[];
  readonly pieces: readonly RowHeld<'pieces'>[];
  readonly breaks: readonly RowHeld<'breaks'>[];
}

/** The pieces pulled, in the order of their pulls; pulls without a time come last, by their code. */
export function pulledPieces(rows: PulledRows, person: string | null): readonly PulledPiece[] {
  const pieces = new Map(rows.pieces.map(({ body }) => [body.piece, body]));
  const readings = Map.groupBy(rows.breaks, ({ body }) => body.pull);
  return rows.pulls
    .map(({ body }) => body)
    .toSorted(inTime)
    .flatMap((pull) => {
      const piece = pieces.get(pull.piece);
      if (piece === undefined) return [];
      const read = readings.get(pull.pull) ?? [];
      const mine = read.filter(({ body }) => body.examiner === person);
      const names = read.map(({ body }) => body.examiner).filter((name) => name !== person);
      return [{ pull, piece, mine, others: [...new Set(names)] }];
    });
}

function inTime(a: Row<'pulls'>, b: Row<'pulls'>): number {
  const [first, second] = [a.pulled_at ?? '~', b.pulled_at ?? '~'];
  if (first !== second) return first < second ? -1 : 1;
  return a.pull.localeCompare(b.pull, 'en', { numeric: true });
}

/** The next pull after this one that the person has not read, going round; null when all are read. */
export function nextToRead(list: readonly PulledPiece[], after: string): PulledPiece | null {
  const at = list.findIndex(({ pull }) => pull.pull === after);
  const round = [...list.slice(at + 1), ...list.slice(0, Math.max(at, 0))];
  return round.find(({ mine }) => mine.length === 0) ?? null;
}
