import type { ReadingQuestion } from '@provinghouse/core';
import { type KeyboardEvent, type RefObject, useId, useState } from 'react';
import { text } from '../../lib/text.ts';
import { readingText } from './place-words.ts';
import type { TypedReading } from './typed-reading.ts';

const words = text.gaugingDesk.now;

interface ReadingFieldProps {
  /** The place at hand, in words: what stands in the field is meant for it. */
  readonly place: string;
  readonly box: RefObject<HTMLInputElement | null>;
  readonly read: (typed: string) => TypedReading;
  /** The value that was read, with everything that was asked or noted about it. */
  readonly onKeep: (value_mm: number, said: readonly string[]) => void;
  /** A key pressed while the field is empty; true where it meant something. */
  readonly onKey: (event: KeyboardEvent) => boolean;
}

interface Asked {
  readonly value_mm: number;
  readonly questions: readonly ReadingQuestion[];
  readonly notes: readonly string[];
}

type Told = { readonly asked: Asked } | { readonly fault: string } | null;

/** The one field: a reading and Enter. What is asked about it is asked here, before anything is kept. */
export function ReadingField({ place, box, read, onKeep, onKey }: ReadingFieldProps) {
  const [typed, setTyped] = useState('');
  const [told, setTold] = useState<Told>(null);
  const [of, setOf] = useState(place);
  const id = useId();
  if (of !== place) {
    setOf(place);
    setTyped('');
    setTold(null);
  }
  const keep = (value_mm: number, said: readonly string[]) => {
    setTyped('');
    setTold(null);
    onKeep(value_mm, said);
  };
  const submit = (entered: string) => {
    const reading = read(entered);
    if (!reading.ok) {
      setTold({ fault: reading.fault });
      return box.current?.select();
    }
    const { value_mm, questions, notes } = reading;
    const isAsked = told !== null && 'asked' in told && told.asked.value_mm === value_mm;
    const said = [...notes, ...questions.map((question) => question.words)];
    if (isAsked || !questions.some(({ weight }) => weight === 'look again')) return keep(value_mm, said);
    setTyped(entered);
    setTold({ asked: { value_mm, questions, notes } });
    box.current?.select();
  };
  const asked = told !== null && 'asked' in told ? told.asked : null;
  const proposal = asked?.questions.find(({ proposal_mm }) => proposal_mm !== null)?.proposal_mm ?? null;
  const takeProposal = () => {
    if (proposal === null) return;
    submit(String(proposal));
    box.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      event.preventDefault();
      return submit(typed);
    }
    if (event.key === 'Escape') {
      setTyped('');
      setTold(null);
    } else if (proposal !== null && isPlain(event) && event.key.toLowerCase() === 'p') takeProposal();
    else if (!((typed.trim() === '' || isMove(event)) && onKey(event))) return;
    event.preventDefault();
  };
  return (
    <div className="gauging-field">
      <label className="for-ears" htmlFor={id}>
        {words.field(place)}
      </label>
      <p className="gauging-entry">
        <input
          id={id}
          ref={box}
          className="gauging-box"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          value={typed}
          aria-invalid={told === null ? undefined : true}
          aria-describedby={told === null ? undefined : `${id}-told`}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
            if (told !== null && 'fault' in told) setTold(null);
          }}
          onKeyDown={onKeyDown}
        />
        <span className="unit">mm</span>
        <button
          type="button"
          className="press gauging-keep"
          onClick={() => {
            submit(typed);
            box.current?.focus();
          }}
        >
          {words.keep} <kbd>Enter</kbd>
        </button>
      </p>
      <div id={`${id}-told`} className="gauging-told" role="alert">
        {told !== null && 'fault' in told ? <p className="form-fault">{told.fault}</p> : null}
        {asked === null ? null : <AskedAgain asked={asked} proposal={proposal} onProposal={takeProposal} />}
      </div>
    </div>
  );
}

function isPlain({ ctrlKey, altKey, metaKey }: KeyboardEvent): boolean {
  return !ctrlKey && !altKey && !metaKey;
}

function isMove({ key }: KeyboardEvent): boolean {
  return key === 'ArrowUp' || key === 'ArrowDown' || key === 'PageUp' || key === 'PageDown';
}

interface AskedAgainProps {
  readonly asked: Asked;
  readonly proposal: number | null;
  readonly onProposal: () => void;
}

function AskedAgain({ asked, proposal, onProposal }: AskedAgainProps) {
  return (
    <>
      <ul className="gauging-questions">
        {[...asked.questions.map((question) => question.words), ...asked.notes].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p className="gauging-answers">
        {proposal === null ? null : (
          <button type="button" className="press" onClick={onProposal}>
            {words.proposal(readingText(proposal))} <kbd>P</kbd>
          </button>
        )}
        <span>{words.asRead}</span>
      </p>
    </>
  );
}
