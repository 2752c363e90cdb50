import type { EntryRequest, Row } from '@provinghouse/contract';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import type { DeskRows, PieceAtDesk } from './gauging-desk.ts';
import type { LogEntry } from './gauging-log.ts';
import type { ReadingSeen } from './merged-readings.ts';
import type { LengthKit } from './use-length-kit.ts';

/** All that the screens of Gauging share. */
export interface DeskState {
  readonly code: string;
  readonly rows: DeskRows;
  readonly pieces: readonly PieceAtDesk[];
  readonly readings: readonly ReadingSeen[];
  /** Entries of this window on this campaign. */
  readonly log: readonly LogEntry[];
  readonly kit: LengthKit;
  readonly person: string | null;
}

/** Readings as an entry, with whoever and whatever the campaign does not know yet. */
export function entryOf(readings: readonly Row<'gauging'>[], desk: DeskState): Omit<EntryRequest, 'who'> {
  const held = desk.rows.people.map(({ body }) => body);
  const names = [...new Set(readings.map(({ by }) => by))];
  const people = names.flatMap((name) => peopleRows(held, name));
  const { instruments, calibrations } = desk.kit.rows;
  const override = desk.kit.isOpen ? desk.kit.reason : null;
  return {
    rows: {
      ...(people.length > 0 ? { people } : {}),
      ...(instruments.length > 0 ? { instruments } : {}),
      ...(calibrations.length > 0 ? { calibrations } : {}),
      gauging: readings,
    },
    ...(override === null ? {} : { override }),
  };
}
