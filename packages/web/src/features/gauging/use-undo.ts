import type { Row } from '@provinghouse/contract';
import { placeKey } from '@provinghouse/core';
import { useLocation } from 'wouter';
import { hrefs } from '../../lib/route.ts';
import type { DeskState } from './desk-state.ts';
import { type PieceAtDesk, toInput } from './gauging-desk.ts';
import { takeBack } from './gauging-log.ts';
import { lastReading } from './merged-readings.ts';

interface UndoInputs {
  readonly desk: DeskState;
  readonly at: PieceAtDesk;
  readonly moveTo: (index: number) => void;
}

interface Undo {
  /** The reading that was read last in this window; null where there is none. */
  readonly last: Row<'gauging'> | null;
  readonly take: () => void;
}

/** Takes back the last reading of this window and asks for its place again. */
export function useUndo({ desk, at, moveTo }: UndoInputs): Undo {
  const [, navigate] = useLocation();
  const last = lastReading(desk.log);
  const take = () => {
    if (last === null) return;
    const seen = desk.readings.find(
      ({ row }) => row.piece === last.piece && placeKey(toInput(row)) === placeKey(toInput(last)),
    );
    takeBack(desk.code, last, seen?.held?.revision ?? null);
    if (last.piece !== at.piece) return navigate(hrefs.gaugingOf(desk.code, last.piece));
    const found = at.progress.places.findIndex(
      (place) => placeKey({ ...place, repeat: 1 }) === placeKey({ ...toInput(last), repeat: 1 }),
    );
    if (found >= 0) moveTo(found);
  };
  return { last, take };
}
