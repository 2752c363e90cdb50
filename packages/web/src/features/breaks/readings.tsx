import type { RowHeld } from '@provinghouse/contract';
import { readerStanding } from '@provinghouse/core';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { ReaderMark } from '../../components/reader-mark.tsx';
import { RowChanges } from '../../components/row-changes.tsx';
import type { AskedColumn } from '../../components/row-form.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { PulledPiece } from './pulled-pieces.ts';

interface ReadingsProps {
  readonly code: string;
  readonly piece: string;
  readonly readings: readonly RowHeld<'breaks'>[];
  readonly next: PulledPiece | null;
  readonly isAnother: boolean;
  readonly onAnother: () => void;
}

/** Everybody's reading of a break, beside each other; each can be corrected with a reason. */
export function Readings({ code, piece, readings, next, isAnother, onAnother }: ReadingsProps) {
  const words = text.breaks;
  const first = useRef<HTMLAnchorElement>(null);
  // Whoever has just kept a reading goes on with Enter.
  useEffect(() => first.current?.focus(), []);
  const sorted = readings.toSorted((a, b) => a.body.link - b.body.link);
  const standing = readerStanding(readings.map(({ body }) => body));
  return (
    <div className="break-rows">
      <p>
        {standing.readers.length < 2 ? (
          words.onlyYou
        ) : (
          <ReaderMark standing={standing}>{text.readers.says(standing)}</ReaderMark>
        )}
      </p>
      <div className="pad-scroll">
        <table className="leaf breaks-table">
          <ColumnHeads names={Object.values(words.column)} />
          <tbody>
            {sorted.map((row) => (
              <ReadingRow key={row.id} code={code} piece={piece} row={row} />
            ))}
          </tbody>
        </table>
      </div>
      <p className="form-keys">
        {next === null ? (
          <span>{words.allRead}</span>
        ) : (
          <Link ref={first} className="press press-main" href={hrefs.breakOf(code, next.pull.pull)}>
            {words.next(next.piece.piece)}
          </Link>
        )}
        {isAnother ? null : (
          <button type="button" className="press" onClick={onAnother}>
            {words.anotherLink}
          </button>
        )}
      </p>
    </div>
  );
}

const asked: readonly AskedColumn[] = [
  { column: 'position', label: text.breaks.column.position },
  { column: 'mode', label: text.breaks.column.mode },
  { column: 'note', label: text.breaks.column.note, rows: 2 },
];

interface ReadingRowProps {
  readonly code: string;
  readonly piece: string;
  readonly row: RowHeld<'breaks'>;
}

function ReadingRow({ code, piece, row }: ReadingRowProps) {
  const words = text.breaks;
  const { link, position, mode, examiner, note } = row.body;
  return (
    <tr>
      <td>{link === 0 ? words.gripped : link}</td>
      <td>{position}</td>
      <td>{mode}</td>
      <td>{examiner}</td>
      <td>{note ?? ''}</td>
      <RowChanges
        book={code}
        kind="breaks"
        held={row}
        asked={asked}
        what={words.what(piece, examiner)}
        names={{ correct: words.correctNamed(examiner, link), takeOut: words.takeOutNamed(examiner, link) }}
      />
    </tr>
  );
}
