import { type Row, rowWith } from '@provinghouse/contract';
import { instantOf, readTime } from '../../lib/entry/bench-clock.ts';
import { text } from '../../lib/text.ts';
import { nextPull } from './incoming.ts';
import type { Desk } from './use-desk.ts';

/** What stands in the fields of a pull that is being entered. */
export interface PullTyped {
  readonly piece: string;
  readonly pull: string;
  readonly rig: string;
  readonly operator: string;
  /** Day and time as they are typed, by the clock of this bench. */
  readonly when: string;
  readonly note: string;
  /** What a further pull of a piece is. */
  readonly second: string;
  /** Why the rig is used without a certificate in force. */
  readonly override: string;
}

export type PullFaults = Partial<Record<keyof PullTyped, string>>;

/** What is missing or taken, by field, in words; empty where the pull can be entered. */
export function pullFaults(typed: PullTyped, desk: Desk, asksOverride: boolean): PullFaults {
  const words = text.pulls.fault;
  const codes = desk.pulls.map(({ body }) => body.pull);
  const pull = typed.pull.trim();
  const when = readTime(typed.when);
  const isPulled = desk.pulls.some(({ body }) => body.piece === typed.piece);
  return {
    ...(typed.piece === '' ? { piece: words.piece } : {}),
    ...(typed.rig === '' ? { rig: words.rig } : {}),
    ...(pull === '' ? { pull: words.pull } : {}),
    ...(codes.includes(pull) ? { pull: words.taken(pull, nextPull(codes)) } : {}),
    ...(when.ok ? {} : { when: text.entry.fault.typed(when.fault) }),
    ...(isPulled && typed.second === '' ? { second: words.second } : {}),
    ...(asksOverride && typed.override.trim() === '' ? { override: words.override } : {}),
  };
}

/** The row as typed, with the cells that its recording or its panel gives. */
export function pullRow(typed: PullTyped, desk: Desk, cells: Partial<Row<'pulls'>>): Row<'pulls'> {
  const earlier = desk.pulls.filter(({ body }) => body.piece === typed.piece).map(({ body }) => body.pull);
  const kind = earlier.length === 0 ? [] : [text.pulls.fields.secondNote(typed.second, earlier.join(', '))];
  const note = [...kind, typed.note.trim()].filter((part) => part !== '').join('. ');
  return rowWith('pulls', {
    pull: typed.pull.trim(),
    piece: typed.piece,
    rig: typed.rig,
    operator: typed.operator.trim() || null,
    pulled_at: instantOf(typed.when),
    valid: true,
    note: note === '' ? null : note,
    ...cells,
  });
}
