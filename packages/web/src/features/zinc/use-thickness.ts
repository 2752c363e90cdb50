import { type Row, type RowHeld, rowWith, tables } from '@provinghouse/contract';
import { type ThicknessQuestion, thicknessQuestions } from '@provinghouse/core';
import { useEffect, useState } from 'react';
import { readTyped } from '../../lib/entry/cell-text.ts';
import { enter, withdraw } from '../../lib/entry/enter.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { usePerson } from '../../lib/entry/person.ts';
import { readRows } from '../../lib/entry/use-rows.ts';
import { text } from '../../lib/text.ts';
import { neighbourLink, nextPlace, placeOn, readingsOf, type SurveyPlace, type SurveyPlan } from './survey-place.ts';
import type { Gauge } from './use-gauge.ts';
import { thicknessesLike, type ZincRows } from './zinc-rows.ts';

interface ThicknessSurvey {
  readonly code: string;
  readonly piece: Row<'pieces'>;
  readonly rows: ZincRows;
  readonly plan: SurveyPlan;
  readonly gauge: Gauge;
}

/** A reading of this visit. */
interface Entered extends SurveyPlace {
  readonly thickness_um: number;
}

/** The quick entry of thicknesses: what is asked for, what was typed, what is doubtful, what was taken back. */
export interface ThicknessEntry {
  readonly typed: string;
  readonly type: (typed: string) => void;
  /** What is read next; null when the plan is fulfilled. */
  readonly place: SurveyPlace | null;
  readonly isExtra: boolean;
  readonly fault: string | null;
  readonly questions: readonly ThicknessQuestion[];
  /** What became of the last one, for the eye and a reader's ear. */
  readonly told: string | null;
  /** Readings of the piece, those on their way among them. */
  readonly readings: readonly Row<'zinc'>[];
  /** True when something was sent, or will be as soon as it can be. */
  readonly submit: () => void;
  readonly toLink: (link: number) => void;
  readonly step: (by: 1 | -1) => void;
  readonly oneMore: () => void;
  readonly undo: () => Promise<void>;
  readonly canUndo: boolean;
}

const words = text.zinc.thickness;
const field = tables.zinc.fields.thickness_um;

export function useThickness({ code, piece, rows, plan, gauge }: ThicknessSurvey): ThicknessEntry {
  const person = usePerson();
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState<number | null>(null);
  const [pending, setPending] = useState<readonly Entered[]>([]);
  const [done, setDone] = useState<readonly Entered[]>([]);
  const [fault, setFault] = useState<string | null>(null);
  const [asked, setAsked] = useState<{ readonly typed: string; readonly questions: readonly ThicknessQuestion[] }>();
  const [told, setTold] = useState<string | null>(null);
  const held = rows.zinc.filter(({ body }) => body.piece === piece.piece);
  useEffect(() => setPending((now) => now.filter((one) => !isHeld(one, rows.zinc, piece.piece))), [rows.zinc, piece]);
  const readings = [
    ...held.map(({ body }) => body),
    ...pending
      .filter((one) => !isHeld(one, held, piece.piece))
      .map((one) => rowWith('zinc', { piece: piece.piece, ...one })),
  ];
  const place = chosen === null ? nextPlace(plan, readings) : placeOn(chosen, readings);
  const questions = asked?.typed === typed ? asked.questions : [];
  const send = async (entered: Entered) => {
    setPending((now) => [...now, entered]);
    const at = words.at(entered.link, entered.reading);
    const row = rowWith('zinc', { ...entered, piece: piece.piece, instrument: gauge.chosen, by: person });
    const people = peopleRows(
      rows.people.map(({ body }) => body),
      person,
    );
    const outcome = await enter(
      { book: code, label: words.entry(piece.piece, at) },
      { rows: { people, ...gauge.kit, zinc: [row] }, override: gauge.isOpen ? gauge.override : null },
    );
    if (outcome.kept) return setDone((now) => [...now, entered]);
    setPending((now) => now.filter((one) => one !== entered));
    setFault(words.refused(at, `${entered.thickness_um}`, outcome.fault.detail));
  };
  const submit = () => {
    setTold(null);
    const reading = readTyped(field, typed.replace(/\s*[uµμ]m\s*$/i, ''));
    const wrong = faultOf(reading, { place, gauge });
    setFault(wrong);
    if (wrong !== null || place === null || !reading.ok || typeof reading.value !== 'number') return;
    const thickness_um = reading.value;
    const others_um = [...thicknessesLike(piece, rows), ...pending.map((one) => one.thickness_um)];
    const found = thicknessQuestions({ thickness_um, others_um });
    if (found.length > 0 && asked?.typed !== typed) return setAsked({ typed, questions: found });
    setAsked(undefined);
    setTyped('');
    setTold(words.keptAs(`${thickness_um}`, words.at(place.link, place.reading)));
    // A link chosen by hand is left once it has its readings.
    if (chosen !== null && readingsOf(chosen, readings) + 1 >= plan.readingsPerLink) setChosen(null);
    void send({ ...place, thickness_um });
  };
  const undo = async () => {
    const last = done.at(-1);
    setFault(null);
    if (last === undefined) return setTold(words.nothingToUndo);
    const answer = await takeBack(code, piece.piece, last);
    if (answer !== null) return setFault(words.notUndone(answer));
    setDone((now) => now.filter((one) => one !== last));
    setChosen(null);
    setTold(words.undone(words.at(last.link, last.reading), `${last.thickness_um}`));
  };
  return {
    ...{ typed, place, fault, questions, told, readings, submit, undo },
    type: (next) => {
      setFault(null);
      setTyped(next);
    },
    isExtra: place !== null && readingsOf(place.link, readings) >= plan.readingsPerLink,
    toLink: setChosen,
    step: (by) => setChosen((now) => neighbourLink(now ?? place?.link ?? 1, by, piece.links)),
    oneMore: () => setChosen(chosen ?? done.at(-1)?.link ?? place?.link ?? 1),
    canUndo: done.length > 0,
  };
}

function isHeld(one: SurveyPlace, held: readonly RowHeld<'zinc'>[], piece: string): boolean {
  return held.some(({ body }) => body.piece === piece && body.link === one.link && body.reading === one.reading);
}

interface Asking {
  readonly place: SurveyPlace | null;
  readonly gauge: Gauge;
}

function faultOf(reading: ReturnType<typeof readTyped>, { place, gauge }: Asking): string | null {
  if (!reading.ok) return text.entry.fault.typed(reading.fault);
  if (reading.value === null) return place === null ? words.doneMore : words.empty;
  if (place === null) return words.doneMore;
  return gauge.isOpen && gauge.override.trim() === '' ? words.overrideNeeded : null;
}

/** Takes a reading out of the record; the words of what stood in the way, or null. */
async function takeBack(book: string, piece: string, { link, reading }: SurveyPlace): Promise<string | null> {
  const found = await readRows(book, 'zinc');
  if ('fault' in found) return found.fault.detail;
  const row = found.rows.find(({ body }) => body.piece === piece && body.link === link && body.reading === reading);
  if (row === undefined) return null;
  const outcome = await withdraw(
    { book, label: words.undo },
    { kind: 'zinc', id: row.id, revision: row.revision, why: words.undoWhy },
  );
  return outcome.kept ? null : outcome.fault.detail;
}
