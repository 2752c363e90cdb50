import { type Row, rowWith, tables } from '@provinghouse/contract';
import { adherenceQuestion, adherenceWords } from '@provinghouse/core';
import { type FormEvent, useRef, useState } from 'react';
import { TextField } from '../../components/form-field.tsx';
import { ChainDrawing, chainRegion } from '../../components/link-drawing-chain.tsx';
import { DrawnChoice } from '../../components/link-drawing-choice.tsx';
import type { LinkProportion } from '../../components/link-drawing-proportion.ts';
import { chainScene } from '../../components/link-drawing-scene.ts';
import { useChoiceKeys } from '../../components/use-choice-keys.ts';
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
  const [isAsked, setAsked] = useState(false);
  const [looked, setLooked] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const set = (change: Partial<Typed>) => {
    setRefused(null);
    setTyped((now) => ({ ...now, ...change }));
  };
  const share = readTyped(tables.zinc.fields.flaked_share_pct, typed.share.replace(/\s*%\s*$/, ''));
  const grade = typed.grade === '' ? null : Number(typed.grade);
  const share_pct = share.ok && typeof share.value === 'number' ? share.value : null;
  const question = adherenceQuestion(grade, share_pct);
  const keep = async () => {
    setAsked(true);
    if (typed.link === '' || grade === null || !share.ok) return focusFirst(form.current, typed);
    if (question !== null && looked !== question) return setLooked(question);
    const link = Number(typed.link);
    const row = rowWith('zinc', {
      ...placeOn(
        link,
        held.map(({ body }) => body),
      ),
      ...{
        piece: piece.piece,
        adherence: grade,
        flaked_share_pct: share_pct,
        by: person,
        note: typed.note.trim() || null,
      },
    });
    const people = peopleRows(
      rows.people.map(({ body }) => body),
      person,
    );
    const label = words.entry(piece.piece, link);
    const outcome = await enter({ book: code, label }, { rows: { people, zinc: [row] } });
    if (!outcome.kept) return setRefused(outcome.fault.detail);
    setAsked(false);
    setLooked(null);
    setTyped({ ...blank, link: `${firstOpen(piece.links, new Set([...done, link])) ?? ''}` });
  };
  const gradeKeys = adherenceWords.map((_, one) => [`${one}`, () => set({ grade: `${one}` })] as const);
  useChoiceKeys({ ...Object.fromEntries(gradeKeys), enter: () => void keep() });
  return (
    <>
      <form
        ref={form}
        className="reading-form form"
        noValidate
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          void keep();
        }}
      >
        <LinkAndGrade {...{ piece, proportion, done, typed, set }} isAsked={isAsked} />
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
        <div>
          {question !== null && looked === question ? (
            <div className="asked" role="alert">
              <p>
                <strong>{words.look}</strong>
              </p>
              <p>{question}</p>
              <p className="soft">{words.lookCure}</p>
            </div>
          ) : null}
          {refused === null ? null : (
            <p className="form-fault" role="alert">
              {refused}
            </p>
          )}
          <p className="form-keys">
            <button type="submit" className="press press-main">
              {question !== null && looked === question ? words.keepAsIs : words.keep}
            </button>
          </p>
        </div>
      </form>
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

function focusFirst(form: HTMLFormElement | null, { link, grade }: Typed): void {
  const at = link === '' ? 0 : grade === '' ? 1 : null;
  const found =
    at === null
      ? form?.querySelector<HTMLElement>('[aria-invalid]')
      : form?.querySelectorAll('fieldset')[at]?.querySelector('input');
  found?.focus();
}

interface LinkAndGradeProps extends Omit<AdherenceProps, 'code' | 'rows'> {
  readonly done: ReadonlySet<number>;
  readonly typed: Typed;
  readonly set: (change: Partial<Typed>) => void;
  readonly isAsked: boolean;
}

function LinkAndGrade({ piece, proportion, done, typed, set, isAsked }: LinkAndGradeProps) {
  const scene = chainScene(proportion, piece.links);
  const at = typed.link === '' ? null : Number(typed.link);
  return (
    <>
      <DrawnChoice
        layout="below"
        label={words.linkLabel}
        hint={words.linkHint}
        fault={isAsked && typed.link === '' ? words.linkFault : null}
        value={typed.link}
        onChange={(link) => set({ link })}
        drawing={{
          viewBox: scene.viewBox,
          alt: text.zinc.chain.alt(piece.links, at),
          content: <ChainDrawing scene={scene} at={at} marked={done} />,
        }}
        options={scene.links.map(({ link }) => ({
          value: `${link}`,
          label: text.zinc.chain.free(link),
          letter: null,
          region: chainRegion(scene, link),
        }))}
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
