import type { ColumnsAsked, TracePreview } from '@provinghouse/contract';
import type { Signal } from '@provinghouse/core';
import type { ReactNode } from 'react';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { ChoiceField } from '../../components/form-field.tsx';
import { text } from '../../lib/text.ts';
import { columnWord } from './incoming.ts';

const signals: readonly Signal[] = ['time', 'force', 'table', 'extension'];
const dimensions = { time: 'time', force: 'force', table: 'length', extension: 'length' } as const;

interface ColumnTableProps {
  readonly preview: TracePreview;
  readonly code: string;
  readonly rig: string;
  readonly onChoose: (columns: ColumnsAsked) => void;
}

/** The columns of a file with their units and first readings, and which is taken for what: to be settled where it is open, else to be changed. */
export function ColumnTable({ preview, code, rig, onChoose }: ColumnTableProps) {
  const words = text.pulls.columns;
  const { profile, asked } = preview;
  const isChosen = Object.values(asked).some((one) => one !== null);
  return (
    <div className="pulls-columns">
      <FoundColumns preview={preview} />
      {profile === null ? null : (
        <p className="pulls-profile">
          {words.profile(profile.pull, profile.campaign === code ? null : profile.campaign, rig)}
        </p>
      )}
      <Choosing preview={preview} isOpen={isChosen || preview.questions.length > 0}>
        {signals.map((signal) => (
          <SignalChoice key={signal} signal={signal} preview={preview} onChoose={onChoose} />
        ))}
      </Choosing>
      {takenTwice(preview) ? (
        <p className="form-fault" role="alert">
          {words.twice}
        </p>
      ) : null}
      {isChosen ? (
        <p className="pulls-by-header">
          <button
            type="button"
            className="press"
            onClick={() => onChoose({ time: null, force: null, table: null, extension: null })}
          >
            {words.byHeader}
          </button>
          {profile === null && rig !== '' ? <span className="soft small">{words.remembered(rig)}</span> : null}
        </p>
      ) : null}
      <Reasons preview={preview} />
    </div>
  );
}

interface ChoosingProps {
  readonly preview: TracePreview;
  readonly isOpen: boolean;
  readonly children: ReactNode;
}

/** Folded away while the header settles everything; what is open, or was chosen, lies open. */
function Choosing({ preview, isOpen, children }: ChoosingProps) {
  const words = text.pulls.columns;
  const isAsking = preview.questions.length > 0;
  return (
    <details className="pulls-fold" open={isOpen} key={String(isOpen)}>
      <summary>{isAsking ? words.choose : words.change}</summary>
      <fieldset className="pulls-signals" aria-label={words.choose}>
        {children}
      </fieldset>
    </details>
  );
}

/** Whether one column of the file is taken for two signals. */
export function takenTwice({ taken }: TracePreview): boolean {
  const columns = signals.flatMap((signal) => taken[signal]?.column ?? []);
  return new Set(columns).size < columns.length;
}

function FoundColumns({ preview }: { readonly preview: TracePreview }) {
  const { head, title, noUnit, strangeUnit, signal: names } = text.pulls.columns;
  const use = (column: number) => signals.filter((one) => preview.taken[one]?.column === column);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reached by the keyboard
    <section className="pad-scroll" aria-label={title} tabIndex={0}>
      <table className="leaf pulls-found">
        <caption>{title}</caption>
        <ColumnHeads names={[head.column, head.unit, head.first, head.as]} />
        <tbody>
          {preview.columns.map(({ column, name, unitText, unit, first }) => (
            <tr key={column}>
              <th scope="row">{name}</th>
              <td>
                {unitText === null ? (
                  <span className="soft">{noUnit}</span>
                ) : unit === null ? (
                  strangeUnit(unitText)
                ) : (
                  unitText
                )}
              </td>
              <td className="soft">{first.join(' · ')}</td>
              <td>
                {use(column)
                  .map((one) => names[one])
                  .join(', ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface SignalChoiceProps {
  readonly signal: Signal;
  readonly preview: TracePreview;
  readonly onChoose: (columns: ColumnsAsked) => void;
}

function SignalChoice({ signal, preview, onChoose }: SignalChoiceProps) {
  const words = text.pulls.columns;
  const { columns, asked, taken } = preview;
  const question = preview.questions.find((one) => one.signal === signal) ?? null;
  const column = taken[signal]?.column ?? (question?.asks === 'unit' ? (question.columns[0] ?? null) : null);
  const choose = (word: string) => onChoose({ ...asked, [signal]: word });
  const told = question === null ? null : (words.ask[question.code] ?? null);
  return (
    <div className="pulls-signal">
      <ChoiceField
        label={words.signal[signal]}
        value={column === null ? (question === null ? 'none' : '') : String(column)}
        fault={question?.asks === 'column' ? told : null}
        {...(question?.asks === 'column' ? { empty: words.open } : {})}
        choices={[
          ...columns.map((one) => ({
            value: String(one.column),
            label: words.option(one.column, one.name, one.unitText),
          })),
          ...(signal === 'force' ? [] : [{ value: 'none', label: words.none }]),
        ]}
        onChange={(value) => {
          if (value !== '') choose(value === 'none' ? 'none' : columnWord(columns, Number(value), null));
        }}
      />
      {column === null ? null : (
        <ChoiceField
          label={words.unitOf[signal]}
          value={taken[signal]?.unit ?? ''}
          fault={question?.asks === 'unit' ? told : null}
          {...(question?.asks === 'unit' ? { empty: words.unitOpen } : {})}
          choices={preview.units[dimensions[signal]].map((unit) => ({ value: unit, label: unit }))}
          onChange={(unit) => {
            if (unit !== '') choose(columnWord(columns, column, unit));
          }}
        />
      )}
    </div>
  );
}

function Reasons({ preview }: { readonly preview: TracePreview }) {
  const words = text.pulls.columns;
  const told = signals.flatMap((signal) => {
    const taken = preview.taken[signal];
    return taken === null ? [] : [{ signal, taken }];
  });
  if (told.length === 0) return null;
  return (
    <details className="pulls-fold">
      <summary>{words.why}</summary>
      <ul className="sentences soft">
        {told.map(({ signal, taken }) => (
          <li key={signal}>
            {text.readingFrom(text.signal[signal], taken.name, taken.unit)} {taken.because}.
          </li>
        ))}
      </ul>
    </details>
  );
}
