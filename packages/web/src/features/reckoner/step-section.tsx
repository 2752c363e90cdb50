import { type Calculation, reckon } from '@provinghouse/core';
import { useMemo } from 'react';
import { Section } from '../../components/page.tsx';
import { text } from '../../lib/text.ts';
import { EntryField } from './entry-field.tsx';
import { ResultTable } from './result-table.tsx';
import { printed } from './result-text.ts';
import type { SheetReckoning, StepReckoning } from './sheet-reckoning.ts';
import type { SheetActions } from './use-sheet.ts';

interface StepSectionProps {
  readonly step: StepReckoning;
  readonly all: SheetReckoning;
  /** How many calculations are on the sheet. */
  readonly count: number;
  readonly actions: SheetActions;
}

const words = text.reckoner;

/** One calculation: its fields, its results, its formula and source. */
export function StepSection({ step, all, count, actions }: StepSectionProps) {
  const { number, name, calculation } = step;
  if (calculation === null) {
    return (
      <Section label={`${number}`}>
        <p className="form-fault">{words.unknown(name)}</p>
        <p>{words.unknownCure}</p>
        <TakeOff title={name} onTakeOff={() => actions.takeOff(number)} />
      </Section>
    );
  }
  const { title, example } = calculation;
  const firstOfAnyUnit = step.fields.find(({ input }) => input.unit === 'any');
  const exampleEntries = Object.fromEntries(Object.entries(example).map(([key, value]) => [key, String(value)]));
  return (
    <div data-step={number}>
      <Section label={count === 1 ? title : `${number}. ${title}`}>
        <div className="reckoned">
          <fieldset aria-label={`${title}: ${words.entries}`} className="reckoned-entries blanks">
            {step.fields.map((field) => (
              <EntryField
                key={field.input.key}
                field={field}
                all={all}
                saysUnit={field === firstOfAnyUnit}
                onEntry={(entry) => actions.type({ step: number, key: field.input.key }, entry)}
              />
            ))}
          </fieldset>
          <div className="reckoned-side">
            <Standing step={step} />
            <ResultTable step={step} calculation={calculation} actions={actions} />
          </div>
        </div>
        <Rests calculation={calculation} step={step} />
        <p className="reckoned-presses">
          <button type="button" className="press" onClick={() => actions.fill(number, exampleEntries)}>
            {words.example}
          </button>
          <button type="button" className="press" onClick={() => actions.fill(number, {})}>
            {words.clear}
          </button>
          <TakeOff title={title} onTakeOff={() => actions.takeOff(number)} />
        </p>
      </Section>
    </div>
  );
}

function TakeOff({ title, onTakeOff }: { readonly title: string; readonly onTakeOff: () => void }) {
  return (
    <button type="button" className="press" aria-label={words.takeOffLabel(title)} onClick={onTakeOff}>
      {words.takeOff}
    </button>
  );
}

/** What still stands between the fields and a result. */
function Standing({ step }: { readonly step: StepReckoning }) {
  const { missing, fault, fields, reckoning } = step;
  if (fault !== null) return <p className="form-fault">{fault}</p>;
  if (reckoning !== null || fields.some((field) => field.fault !== null)) return null;
  if (missing.length === 0) return <p className="soft">{words.needOne}</p>;
  return <p className="soft">{words.needed(missing.map(({ meaning }) => printed(meaning)).join('; '))}</p>;
}

/** What a result rests on, and the same as a command for the terminal. */
function Rests({ calculation, step }: { readonly calculation: Calculation; readonly step: StepReckoning }) {
  const { formula, source } = calculation;
  // Before there is a result, the doubts are those of the example: they are of the method.
  const ofMethod = useMemo(() => reckon(calculation.name, calculation.example).doubts, [calculation]);
  const doubts = step.reckoning?.doubts ?? ofMethod;
  return (
    <dl className="facts reckoned-rests">
      <dt>{words.formula}</dt>
      <dd className="reckoned-formula">{formula}</dd>
      <dt>{words.source}</dt>
      <dd>
        {source} {/memory/i.test(source) ? <span className="badge badge-doubt">{words.memory}</span> : null}
      </dd>
      {doubts.length === 0 && !/memory/i.test(source) ? null : (
        <>
          <dt>{words.doubts}</dt>
          <dd>
            {doubts.map((doubt) => (
              <span key={doubt} className="line">
                {doubt}
              </span>
            ))}
            {/memory/i.test(source) && !doubts.some((doubt) => /memory/i.test(doubt)) ? (
              <span className="line">{words.memoryWords}</span>
            ) : null}
          </dd>
        </>
      )}
      <dt>{words.command}</dt>
      <dd>
        <code>{commandOf(step)}</code>
      </dd>
    </dl>
  );
}

function commandOf({ name, fields }: StepReckoning): string {
  const options = fields.flatMap(({ input, shown, fault }) =>
    shown.trim() === '' || fault !== null ? [] : [`--${input.key} ${shown.trim()}`],
  );
  return ['provinghouse reckon', name, ...options].join(' ');
}
