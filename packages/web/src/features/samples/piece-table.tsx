import type { RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { Link } from 'wouter';
import { Correction, Withdrawal } from '../../components/correction.tsx';
import type { AskedColumn } from '../../components/row-form.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { Bench, Fates } from './use-bench.ts';

const words = text.samples.cut;

const pieceColumns: readonly AskedColumn[] = [
  { column: 'links', label: words.links, hint: words.linksHint },
  { column: 'gauged_over', label: words.over },
  { column: 'note', label: words.note, rows: 2, isWide: true },
];

type Open = { readonly what: 'correct' | 'withdraw'; readonly held: RowHeld<'pieces'> } | null;

interface PieceTableProps {
  readonly bench: Bench;
  readonly pieces: readonly RowHeld<'pieces'>[];
}

/** The pieces of a sample and what became of each. */
export function PieceTable({ bench, pieces }: PieceTableProps) {
  const [open, setOpen] = useState<Open>(null);
  const { head } = words;
  if (pieces.length === 0) return <p className="soft">{words.none}</p>;
  return (
    <section className="pad-scroll" aria-label={words.caption}>
      <table className="leaf sample-pieces">
        <caption className="for-ears">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.piece}</th>
            <th scope="col" className="num">
              {head.links}
            </th>
            {[head.over, head.became, head.note].map((name) => (
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
          {pieces.map((held) => (
            <PieceRow key={held.id} bench={bench} held={held} onOpen={setOpen} />
          ))}
        </tbody>
      </table>
      {open?.what === 'correct' ? (
        <Correction
          book={bench.campaign.campaign}
          kind="pieces"
          held={open.held}
          what={words.what(open.held.id)}
          asked={pieceColumns}
          onDone={() => setOpen(null)}
        />
      ) : null}
      {open?.what === 'withdraw' ? (
        <Withdrawal
          book={bench.campaign.campaign}
          kind="pieces"
          held={open.held}
          what={words.what(open.held.id)}
          onDone={() => setOpen(null)}
        />
      ) : null}
    </section>
  );
}

interface PieceRowProps {
  readonly bench: Bench;
  readonly held: RowHeld<'pieces'>;
  readonly onOpen: (open: Open) => void;
}

function PieceRow({ bench, held, onOpen }: PieceRowProps) {
  const { piece, links, gauged_over, note } = held.body;
  return (
    <tr>
      <th scope="row">
        <Link href={hrefs.piece(bench.campaign.campaign, piece)}>{piece}</Link>
      </th>
      <td className="num">{links}</td>
      <td>{gauged_over ?? <span className="soft">{text.notRecorded}</span>}</td>
      <td>{fateText(piece, bench.fates)}</td>
      <td>{note}</td>
      <td className="num sample-keys">
        <button type="button" className="press press-small" onClick={() => onOpen({ what: 'correct', held })}>
          {words.correct}
          <span className="for-ears"> {words.what(piece)}</span>
        </button>
        <button type="button" className="press press-small" onClick={() => onOpen({ what: 'withdraw', held })}>
          {text.entry.correction.withdraw}
          <span className="for-ears"> {words.what(piece)}</span>
        </button>
      </td>
    </tr>
  );
}

/** What became of a piece, furthest last. */
function fateText(piece: string, { readings, pulls, read }: Fates): string {
  const own = pulls.get(piece) ?? [];
  const gauged = readings.get(piece) ?? 0;
  const pulled = own.length === 0 ? [] : [own.some(({ valid }) => valid) ? words.became.pulled : words.became.invalid];
  return [
    words.became.cut,
    ...(gauged === 0 ? [] : [words.became.gauged(gauged)]),
    ...pulled,
    ...(read.has(piece) ? [words.became.read] : []),
  ].join(', ');
}
