import type { Row } from '@provinghouse/contract';

/** Why a sample stands out. */
export type SampleAlert =
  | { readonly kind: 'overdue'; readonly days: number; readonly due: string }
  | { readonly kind: 'noMove' }
  | { readonly kind: 'tooLong'; readonly cut_m: number; readonly received_m: number };

export interface SampleFacts {
  readonly sample: Row<'samples'>;
  readonly moves: readonly Row<'custody'>[];
  readonly pieces: readonly Row<'pieces'>[];
  /** Least pitch of the specification; null where it gives none. */
  readonly pitch_mm: number | null;
  /** ISO 8601. */
  readonly today: string;
}

/** The move made last, which says where the sample is. */
export function lastMove(moves: readonly Row<'custody'>[]): Row<'custody'> | null {
  return moves.toSorted((a, b) => b.move - a.move)[0] ?? null;
}

/** Everything for which a sample must be looked at; empty where it is in its place and no more was cut than received. */
export function alertsOf({ sample, moves, pieces, pitch_mm, today }: SampleFacts): readonly SampleAlert[] {
  const last = lastMove(moves);
  const due = last?.due_back_on ?? null;
  const cut_m = cutLength_m(pieces, pitch_mm);
  const received_m = sample.length_m;
  return [
    ...(last === null ? [{ kind: 'noMove' } as const] : []),
    ...(due !== null && due < today ? [{ kind: 'overdue', days: daysBetween(due, today), due } as const] : []),
    ...(received_m !== null && cut_m !== null && cut_m > received_m
      ? [{ kind: 'tooLong', cut_m, received_m } as const]
      : []),
  ];
}

/**
 * Length that the free links of all pieces make up at least, m: gauge lengths where they were measured, else links times the least pitch.
 * What is gripped comes on top. Null where nothing is known of any piece.
 */
export function cutLength_m(
  pieces: readonly Pick<Row<'pieces'>, 'links' | 'gauge_length_mm'>[],
  pitch_mm: number | null,
): number | null {
  const lengths = pieces.flatMap(({ links, gauge_length_mm }) => {
    const length_mm = gauge_length_mm ?? (pitch_mm === null ? null : links * pitch_mm);
    return length_mm === null ? [] : [length_mm];
  });
  return lengths.length === 0 ? null : lengths.reduce((sum, length) => sum + length, 0) / 1000;
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}
