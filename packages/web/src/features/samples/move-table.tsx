import { type Row, type RowFault, type RowHeld, rowWith } from '@provinghouse/contract';
import { useState } from 'react';
import { Correction } from '../../components/correction.tsx';
import { type AskedColumn, RowForm } from '../../components/row-form.tsx';
import { minuteOf, timeText } from '../../lib/entry/bench-clock.ts';
import { dropDraft } from '../../lib/entry/draft.ts';
import { enter } from '../../lib/entry/enter.ts';
import { peopleRows } from '../../lib/entry/people-rows.ts';
import { usePerson } from '../../lib/entry/person.ts';
import { text } from '../../lib/text.ts';
import { placesOf } from './receive.tsx';
import type { Bench, SampleSeen } from './use-bench.ts';

const words = text.samples.moves;

interface MovesProps {
  readonly bench: Bench;
  readonly seen: SampleSeen;
}

/** Every move of a sample, and where the next one is entered. */
export function MoveTable({ bench, seen }: MovesProps) {
  const [isOpen, setOpen] = useState(seen.moves.length === 0);
  const [corrected, setCorrected] = useState<RowHeld<'custody'> | null>(null);
  return (
    <>
      {seen.moves.length === 0 ? <p>{words.none}</p> : <Moves seen={seen} onCorrect={setCorrected} />}
      {isOpen ? (
        <NewMove bench={bench} seen={seen} onDone={() => setOpen(false)} />
      ) : (
        <p className="form-keys">
          <button type="button" className="press" onClick={() => setOpen(true)}>
            {words.add}
          </button>
        </p>
      )}
      {corrected === null ? null : (
        <Correction
          book={bench.campaign.campaign}
          kind="custody"
          held={corrected}
          what={words.what(corrected.body.move)}
          asked={moveColumns(bench)}
          check={dueFault}
          onDone={() => setCorrected(null)}
        />
      )}
    </>
  );
}

interface MoveRowsProps extends Pick<MovesProps, 'seen'> {
  readonly onCorrect: (held: RowHeld<'custody'>) => void;
}

function Moves({ seen, onCorrect }: MoveRowsProps) {
  const { head } = words;
  return (
    <section className="pad-scroll" aria-label={words.caption}>
      <table className="leaf sample-moves">
        <caption className="for-ears">{words.caption}</caption>
        <thead>
          <tr>
            {Object.values(head).map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
            <th scope="col">
              <span className="for-ears">{text.brief.desk.claims.actions}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {seen.moves
            .toSorted((a, b) => a.body.move - b.body.move)
            .map((held) => (
              <tr key={held.id}>
                <th scope="row">{held.body.move}</th>
                <td className="figure">{timeText(held.body.moved_at)}</td>
                <td>{held.body.place}</td>
                <td>{held.body.by ?? <span className="soft">{text.notRecorded}</span>}</td>
                <td className="figure">{held.body.due_back_on ?? <span className="soft">{text.none}</span>}</td>
                <td>{held.body.note}</td>
                <td className="num sample-keys">
                  <button type="button" className="press press-small" onClick={() => onCorrect(held)}>
                    {text.entry.correction.open}
                    <span className="for-ears"> {words.what(held.body.move)}</span>
                  </button>
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </section>
  );
}

function moveColumns(bench: Bench): readonly AskedColumn[] {
  return [
    { column: 'place', label: words.place, list: placesOf(bench) },
    { column: 'moved_at', label: words.at },
    { column: 'due_back_on', label: words.due, hint: words.dueHint },
    { column: 'note', label: words.note },
  ];
}

function dueFault({ moved_at, due_back_on }: Row<'custody'>): RowFault | null {
  if (due_back_on === null || due_back_on >= moved_at.slice(0, 10)) return null;
  return { column: 'due_back_on', fault: text.entry.fault.typed(words.dueFault) };
}

function NewMove({ bench, seen, onDone }: MovesProps & { readonly onDone: () => void }) {
  const person = usePerson();
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const sample = seen.held.id;
  const book = bench.campaign.campaign;
  const draft = `move ${book} ${sample}`;
  const next = Math.max(0, ...seen.moves.map(({ body }) => body.move)) + 1;
  const keep = async (row: Row<'custody'>) => {
    setBusy(true);
    const rows = { people: peopleRows(bench.people, person), custody: [{ ...row, by: person }] };
    const outcome = await enter({ book, label: words.entering(sample) }, { rows });
    setBusy(false);
    if (!outcome.kept) return setFault(outcome.fault.detail);
    dropDraft(draft);
    onDone();
  };
  const start = rowWith('custody', { sample, move: next, moved_at: minuteOf(new Date()) });
  return (
    <section className="sample-move" aria-label={words.title}>
      <h3>{words.title}</h3>
      <RowForm
        kind="custody"
        asked={moveColumns(bench)}
        start={start}
        keep={words.keep}
        draft={draft}
        isBusy={isBusy}
        check={dueFault}
        onKeep={(row) => void keep(row)}
        {...(seen.moves.length === 0 ? {} : { onCancel: onDone })}
      >
        {fault === null ? null : (
          <p className="form-fault" role="alert">
            {fault}
          </p>
        )}
      </RowForm>
    </section>
  );
}
