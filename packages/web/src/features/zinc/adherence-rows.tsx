import type { RowHeld } from '@provinghouse/contract';
import { adherenceWords } from '@provinghouse/core';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { Figure } from '../../components/figure.tsx';
import { RowChanges } from '../../components/row-changes.tsx';
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
        <ColumnHeads names={Object.values(words.column)} />
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
  const { link, adherence, flaked_share_pct, by, note } = row.body;
  return (
    <tr>
      <th scope="row">{link}</th>
      <td>{adherence === null ? text.none : `${adherence}: ${adherenceWords[adherence] ?? ''}`}</td>
      <td>
        <Figure value={flaked_share_pct} unit="%" />
      </td>
      <td>{by ?? text.none}</td>
      <td>{note ?? ''}</td>
      <RowChanges
        book={code}
        kind="zinc"
        held={row}
        asked={asked}
        what={words.what(piece, link)}
        names={{ correct: words.correctNamed(link), takeOut: words.takeOutNamed(link) }}
      />
    </tr>
  );
}
