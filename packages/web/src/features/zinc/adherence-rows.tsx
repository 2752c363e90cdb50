import type { RowHeld } from '@provinghouse/contract';
import { adherenceWords } from '@provinghouse/core';
import { useState } from 'react';
import { Correction, Withdrawal } from '../../components/correction.tsx';
import { Figure } from '../../components/figure.tsx';
import type { AskedColumn } from '../../components/row-form.tsx';
import { text } from '../../lib/text.ts';

interface AdherenceRowsProps {
  readonly code: string;
  readonly piece: string;
  readonly read: readonly RowHeld<'zinc'>[];
}

const words = text.zinc.adherence;

/** What was read after the pull, link by link; each can be corrected or taken out. */
export function AdherenceRows({ code, piece, read }: AdherenceRowsProps) {
  if (read.length === 0) return <p className="soft adherence-rows">{words.none}</p>;
  const sorted = read.toSorted((a, b) => a.body.link - b.body.link || a.body.reading - b.body.reading);
  return (
    <div className="pad-scroll adherence-rows">
      <table className="leaf">
        <caption>{words.readings}</caption>
        <thead>
          <tr>
            {Object.values(words.column).map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sorted.map((row) => (
            <AdherenceRow key={row.id} code={code} piece={piece} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

const asked: readonly AskedColumn[] = [
  { column: 'adherence', label: words.column.grade },
  { column: 'flaked_share_pct', label: words.column.share, unit: '%' },
  { column: 'note', label: words.column.note },
];

interface AdherenceRowProps {
  readonly code: string;
  readonly piece: string;
  readonly row: RowHeld<'zinc'>;
}

function AdherenceRow({ code, piece, row }: AdherenceRowProps) {
  const [sheet, setSheet] = useState<'correct' | 'take out' | null>(null);
  const { link, adherence, flaked_share_pct, by, note } = row.body;
  const what = words.what(piece, link);
  const done = () => setSheet(null);
  return (
    <tr>
      <th scope="row">{link}</th>
      <td>{adherence === null ? text.none : `${adherence}: ${adherenceWords[adherence] ?? ''}`}</td>
      <td>
        <Figure value={flaked_share_pct} unit="%" />
      </td>
      <td>{by ?? text.none}</td>
      <td>{note ?? ''}</td>
      <td className="changes">
        <button
          type="button"
          className="press press-small"
          aria-label={words.correctNamed(link)}
          onClick={() => setSheet('correct')}
        >
          {text.entry.correction.open}
        </button>{' '}
        <button
          type="button"
          className="press press-small"
          aria-label={words.takeOutNamed(link)}
          onClick={() => setSheet('take out')}
        >
          {text.entry.correction.withdraw}
        </button>
        {sheet === 'correct' ? (
          <Correction book={code} kind="zinc" held={row} asked={asked} what={what} onDone={done} />
        ) : null}
        {sheet === 'take out' ? <Withdrawal book={code} kind="zinc" held={row} what={what} onDone={done} /> : null}
      </td>
    </tr>
  );
}
