import type { FileEntry, Row } from '@provinghouse/contract';
import { enter } from '../../lib/entry/enter.ts';
import { kitRows } from '../../lib/entry/kit-rows.ts';
import type { Outcome } from '../../lib/entry/outbox.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { text } from '../../lib/text.ts';
import type { Desk } from './use-desk.ts';

interface ToKeep {
  readonly row: Row<'pulls'>;
  readonly files?: readonly FileEntry[];
  /** Why a rig without a certificate in force was used; null where it has not been asked. */
  readonly override: string | null;
}

/** Enters a pull with all it needs: its recording, and the rows of rig and operator that the campaign has not got yet. */
export function keepPull(desk: Desk, { row, files = [], override }: ToKeep): Promise<Outcome> {
  const kit = kitRows(row.rig, desk);
  const people = peopleRows(desk.people, row.operator);
  return enter(
    { book: desk.code, label: text.pulls.one.title(row.pull, row.piece) },
    {
      rows: {
        ...(people.length === 0 ? {} : { people }),
        ...(kit.instruments.length === 0 ? {} : { instruments: kit.instruments }),
        ...(kit.calibrations.length === 0 ? {} : { calibrations: kit.calibrations }),
        pulls: [row],
      },
      files,
      ...(override === null ? {} : { override }),
    },
  );
}
