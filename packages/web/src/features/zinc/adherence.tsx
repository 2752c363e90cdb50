import { type Row, rowWith, tables } from '@provinghouse/contract';
import { adherenceQuestion, adherenceWords } from '@provinghouse/core';
import { useRef, useState } from 'react';
import { ChainChoice } from '../../components/chain-choice.tsx';
import { DrawnForm } from '../../components/drawn-form.tsx';
import { TextField } from '../../components/form-field.tsx';
import { DrawnChoice } from '../../components/link-drawing-choice.tsx';
import type { LinkProportion } from '../../components/link-drawing-proportion.ts';
import { readTyped } from '../../lib/entry/cell-text.ts';
import { enter } from '../../lib/entry/enter.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { usePerson } from '../../lib/entry/person.ts';
import { text } from '../../lib/text.ts';
import { AdherenceDrawing } from './adherence-drawing.tsx';
import { AdherenceRows } from './adherence-rows.tsx';
import { placeOn } from './survey-place.ts';
import type { ZincRows } from './zinc-rows.ts';

interface AdherenceProps {
  readonly code: string;
  readonly piece: Row<'pieces'>;
  readonly rows: ZincRows;
  readonly proportion: LinkProportion;
}

interface Typed {
  readonly link: string;
  readonly grade: string;
  readonly share: string;
  readonly note: string;
}

const words = text.zinc.adherence;

/** How the zinc held on the strained links, by a drawing for each grade. */
export function Adherence({ code, piece, rows, proportion }: AdherenceProps) {
  const person = usePerson();
  const held = rows.zinc.filter(({ body }) => body.piece === piece.piece);
  const read = held.filter(({ body }) => body.adherence !== null || body.flaked_share_pct !== null);
  const done = new Set(read.map(({ body }) => body.link));
  const [typed, setTyped] = useState<Typed>({ ...blank, link: `${firstOpen(piece.links, done) ?? ''}` });
  const form = useRef<HTMLFormElement>(null);
  const set = (change: Partial<Typed>) => setTyped((now) => ({ ...now, ...change }));
  const share = readTyped(tables.zinc.fields.flaked_share_pct, typed.share.replace(/\s*%\s*$/, ''));
  const grade = typed.grade === '' ? null : Number(typed.grade);
  const share_pct = share.ok && typeof share.value === 'number' ? share.value : null;
  const question = adherenceQuestion(grade, share_pct);
  const send = () => {
    const link = Number(typed.link);
    const taken = held.map(({ body }) => body);
    const row = rowWith('zinc', {
      ...placeOn(link, taken),
      piece: piece.piece,
      adherence: grade,
      flaked_share_pct: share_pct,
      by: person,
      note: typed.note.trim() || null,
    });
    const known = rows.people.map(({ body }) => body);
    const people = peopleRows(known, person);
    return enter({ book: code, label: words.entry(piece.piece, link) }, { rows: { people, zinc: [row] } });
  };
  const toNext = () =>
    setTyped({ ...blank, link: `${firstOpen(piece.links, new Set([...done, Number(typed.link)])) ?? ''}` });
  return (
    <>
      <DrawnForm
        form={form}
        typed={typed}
        isSound={typed.link !== '' && grade !== null && share.ok}
        questions={question === null ? [] : [question]}
        keys={Object.fromEntries(adherenceWords.map((_, one) => [`${one}`, () => set({ grade: `${one}` })]))}
        keep={words.keep}
        send={send}
        onKept={toNext}
      >
        {(isAsked) => (
          <>
            <LinkAndGrade {...{ piece, proportion, done, typed, set, isAsked }} />
            <div className="form-fields">
              <TextField
                label={words.share}
                hint={words.shareHint}
                isNumber
                unit="%"
                fault={isAsked && !share.ok ? text.entry.fault.typed(share.fault) : null}
                value={typed.share}
                onChange={(next) => set({ share: next })}
              />
              <TextField label={words.note} value={typed.note} onChange={(note) => set({ note })} />
            </div>
          </>
        )}
      </DrawnForm>
      <AdherenceRows code={code} piece={piece.piece} read={read} />
    </>
  );
}

const blank: Typed = { link: '', grade: '', share: '', note: '' };

/** The first link that nobody has looked at; null when all were. */
function firstOpen(links: number, done: ReadonlySet<number>): number | null {
  for (let link = 1; link <= links; link += 1) if (!done.has(link)) return link;
  return null;
}

interface LinkAndGradeProps extends Omit<AdherenceProps, 'code' | 'rows'> {
  readonly done: ReadonlySet<number>;
  readonly typed: Typed;
  readonly set: (change: Partial<Typed>) => void;
  readonly isAsked: boolean;
}

function LinkAndGrade({ piece, proportion, done, typed, set, isAsked }: LinkAndGradeProps) {
  const at = typed.link === '' ? null : Number(typed.link);
  return (
    <>
      <ChainChoice
        label={words.linkLabel}
        hint={words.linkHint}
        fault={isAsked && at === null ? words.linkFault : null}
        alt={text.zinc.chain.alt(piece.links, at)}
        proportion={proportion}
        links={piece.links}
        at={at}
        marked={done}
        onChange={(link) => set({ link: `${link}` })}
      />
      <DrawnChoice
        layout="pictures"
        label={words.gradeLabel}
        hint={words.gradeHint}
        fault={isAsked && typed.grade === '' ? words.gradeFault : null}
        value={typed.grade}
        onChange={(grade) => set({ grade })}
        options={adherenceWords.map((meaning, grade) => ({
          value: `${grade}`,
          label: words.grade(meaning),
          letter: `${grade}`,
          picture: <AdherenceDrawing grade={grade} />,
        }))}
      />
    </>
  );
}
