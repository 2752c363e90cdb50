import type { PieceFinding } from '@provinghouse/contract';
import { type BreakReading, readerStanding } from '@provinghouse/core';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { ReaderMark } from '../../components/reader-mark.tsx';
import { useRows } from '../../lib/entry/use-rows.ts';
import { text } from '../../lib/text.ts';

interface BreakTableProps {
  readonly code: string;
  readonly piece: PieceFinding;
}

/** Where and how the piece parted, as each examiner read it and when, how they agree, and whose reading counts. */
export function BreakTable({ code, piece }: BreakTableProps) {
  const keptAt = useKeptAt(code, piece.pull?.pull ?? null);
  if (piece.breaks.length === 0) return <p className="soft">{text.piece.noBreaks}</p>;
  const { breaksHead: head } = text.piece;
  const standing = readerStanding(piece.breaks);
  return (
    <>
      <p className="lead-in">
        <ReaderMark standing={standing}>{text.readers.says(standing)}</ReaderMark>{' '}
        {standing.readers.length < 2 ? null : text.readers.counted(standing)}
      </p>
      <div className="pad-scroll">
        <table className="leaf">
          <ColumnHeads names={[head.link, head.position, head.mode, head.examiner, head.at, head.counts, head.note]} />
          <tbody>
            {piece.breaks.map((reading) => (
              <tr key={`${reading.link} ${reading.examiner}`}>
                <td>{reading.link === 0 ? text.piece.gripped : reading.link}</td>
                <td>{reading.position}</td>
                <td>{reading.mode}</td>
                <td>{reading.examiner}</td>
                <td>{keptAt(reading)}</td>
                <td>{reading === standing.counted ? text.piece.counts : ''}</td>
                <td>{reading.note ?? ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

/** When a reading was kept, or corrected last, as the ledger says; empty until the rows are read. */
function useKeptAt(code: string, pull: string | null): (reading: BreakReading) => string {
  const rows = useRows(code, 'breaks');
  return ({ link, examiner }) => {
    if (rows.state !== 'read') return '';
    const held = rows.rows.find(({ body }) => body.pull === pull && body.link === link && body.examiner === examiner);
    return held?.at.slice(0, 16).replace('T', ' ') ?? '';
  };
}
