import type { PlannedPulls, Row, RowHeld, TableName } from '@provinghouse/contract';
import { useRef } from 'react';
import { readAt } from '../../lib/api/address.ts';
import { bench } from '../../lib/entry/book.ts';
import type { Kit } from '../../lib/entry/kit-rows.ts';
import { type RowsState, useRows } from '../../lib/entry/use-rows.ts';
import type { Fault } from '../../lib/request.ts';
import { useRecordIfAny } from '../../lib/use-record.ts';

/** All that the place Pulls works with. */
export interface Desk {
  readonly code: string;
  readonly campaign: Row<'campaign'>;
  readonly pieces: readonly Row<'pieces'>[];
  readonly samples: readonly Row<'samples'>[];
  readonly people: readonly Row<'people'>[];
  readonly pulls: readonly RowHeld<'pulls'>[];
  readonly own: Kit;
  readonly bench: Kit;
  readonly planned: PlannedPulls | null;
}

export type DeskState =
  | { readonly state: 'reading' }
  | { readonly state: 'at fault'; readonly fault: Fault; readonly again: () => void }
  | { readonly state: 'read'; readonly desk: Desk; readonly again: () => void };

/**
 * Reads the rows that a pull names, of the campaign and of the bench. The ones read last stand while they are read again, and while the server does
 * not answer: files that wait on the screen must not go with it.
 */
export function useDesk(code: string): DeskState {
  const campaign = useRows(code, 'campaign');
  const pieces = useRows(code, 'pieces');
  const samples = useRows(code, 'samples');
  const people = useRows(code, 'people');
  const pulls = useRows(code, 'pulls');
  const instruments = useRows(code, 'instruments');
  const calibrations = useRows(code, 'calibrations');
  const benchInstruments = useRows(bench, 'instruments');
  const benchCalibrations = useRows(bench, 'calibrations');
  const planned = useRecordIfAny(readAt('/api/campaigns/{code}/planned-pulls', { path: { code } }));
  const all = [campaign, pieces, samples, people, pulls, instruments, calibrations];
  const last = useRef<Desk | null>(null);
  const again = () => {
    for (const one of all) if (one.state !== 'reading') one.again();
  };
  const fault = all.find((one) => one.state === 'at fault');
  if (fault && last.current) return { state: 'read', desk: last.current, again };
  if (fault?.state === 'at fault') return { state: 'at fault', fault: fault.fault, again };
  const row = campaign.state === 'read' ? campaign.rows[0]?.body : undefined;
  if (row === undefined || pulls.state !== 'read' || all.some((one) => one.state !== 'read'))
    return { state: 'reading' };
  const desk: Desk = {
    code,
    campaign: row,
    pieces: bodies(pieces),
    samples: bodies(samples),
    people: bodies(people),
    pulls: pulls.rows,
    own: { instruments: bodies(instruments), calibrations: bodies(calibrations) },
    bench: { instruments: bodies(benchInstruments), calibrations: bodies(benchCalibrations) },
    planned,
  };
  last.current = desk;
  return { state: 'read', desk, again };
}

function bodies<T extends TableName>(rows: RowsState<T>): Row<T>[] {
  return rows.state === 'read' ? rows.rows.map(({ body }) => body) : [];
}

/** Everything in kilonewtons that pulls: the campaign's own rigs, then those of Kit that it does not know yet. */
export function rigsOf({
  own,
  bench: kit,
}: Pick<Desk, 'own' | 'bench'>): { readonly rig: Row<'instruments'>; readonly isOwn: boolean }[] {
  const isRig = (row: Row<'instruments'>) => row.kind === 'rig' && row.unit === 'kN';
  const known = own.instruments.filter(isRig);
  const further = kit.instruments.filter(
    (row) => isRig(row) && !own.instruments.some(({ instrument }) => instrument === row.instrument),
  );
  return [...known.map((rig) => ({ rig, isOwn: true })), ...further.map((rig) => ({ rig, isOwn: false }))];
}

/** The rig last used in the campaign, else the only one there is; empty where neither says. */
export function usualRig(desk: Desk): string {
  const last = desk.pulls.at(-1)?.body.rig;
  const rigs = rigsOf(desk);
  return last ?? (rigs.length === 1 ? (rigs[0]?.rig.instrument ?? '') : '');
}
