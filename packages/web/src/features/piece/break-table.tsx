import type { PieceFinding } from '@provinghouse/contract';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { text } from '../../lib/text.ts';

/** Where and how the piece parted, as each examiner read it. */
export function BreakTable({ piece }: { readonly piece: PieceFinding }) {
  if (piece.breaks.length === 0) return <p className="soft">{text.piece.noBreaks}</p>;
  const { breaksHead: head } = text.piece;
  return (
    <table className="leaf">
      {piece.examinersDiffer ? <caption>{text.piece.differ}</caption> : null}
      <ColumnHeads names={[head.link, head.position, head.mode, head.examiner, head.note]} />
      <tbody>
        {piece.breaks.map((reading) => (
          <tr key={`${reading.link} ${reading.examiner}`}>
            <td>{reading.link === 0 ? text.piece.gripped : reading.link}</td>
            <td>{reading.position}</td>
            <td>{reading.mode}</td>
            <td>{reading.examiner}</td>
            <td>{reading.note ?? ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
