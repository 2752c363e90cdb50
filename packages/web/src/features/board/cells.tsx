import type { PieceFinding } from '@provinghouse/contract';
import { type Judgement, type Quantity, quantityUnits, readerStanding, standingOf } from '@provinghouse/core';
import { Link } from 'wouter';
import { Figure, Measured } from '../../components/figure.tsx';
import { ReaderMark } from '../../components/reader-mark.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { figureText } from '../../lib/figure.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

interface CellProps {
  readonly code: string;
  readonly piece: PieceFinding;
}

/** Nothing was done yet; leads to where it is done. */
function ToDo({ href, children }: { readonly href: string; readonly children: string }) {
  return (
    <Link className="board-to-do" href={href}>
      {children}
    </Link>
  );
}

const isDimension = (quantity: Quantity) => quantityUnits[quantity] === 'mm' && quantity !== 'bendDeflection';

/** Bar and limits in short: the mean diameter, and how many of the gauged requirements it meets. */
export function GaugingCell({ code, piece }: CellProps) {
  const { gauging } = piece;
  if (gauging === null) return <ToDo href={hrefs.gaugingOf(code, piece.piece)}>{text.board.notGauged}</ToDo>;
  const judged = piece.judgements.filter((one) => isDimension(one.limit.quantity) && one.verdict !== 'not judged');
  const inside = judged.filter((one) => one.verdict === 'conforms');
  return (
    <>
      <span className="line">
        <Figure value={gauging.meanDiameter_mm} unit="mm" /> <span className="soft">{text.board.mean}</span>
      </span>
      <Standing judgements={judged}>{text.board.inside(inside.length, judged.length)}</Standing>
    </>
  );
}

/** The breaking force with its uncertainty, and how it stands to the minimum. */
export function PullCell({ code, piece }: CellProps) {
  const { pull } = piece;
  if (pull === null) return <ToDo href={hrefs.pulls(code)}>{text.board.notPulled}</ToDo>;
  if (pull.maximum === null) {
    return (
      <>
        <span className="line">{text.board.notUsed}</span>
        <span className="soft small clamp">{pull.reasons.join(' ')}</span>
      </>
    );
  }
  return (
    <>
      <span className="line">
        <Measured measured={pull.maximum} />
      </span>
      <Standing judgements={piece.judgements.filter((one) => one.limit.quantity === 'breakingForce')} />
    </>
  );
}

/** The break as the reading that counts says, the one kept first, and how the readers stand to each other. */
export function BreakCell({ code, piece }: CellProps) {
  const first = piece.breaks[0];
  if (!first)
    return piece.pull === null ? (
      <span className="soft">{text.board.notRead}</span>
    ) : (
      <ToDo href={hrefs.breakOf(code, piece.pull.pull)}>{text.board.notRead}</ToDo>
    );
  const standing = readerStanding(piece.breaks);
  const readers = text.readers.short(standing);
  return (
    <>
      <span className="line">{first.mode}</span>
      <span className="soft small">{text.board.breakAt(first.position, first.link)}</span>
      {readers === null ? null : (
        <span className="small">
          {standing.state === 'agree' ? <span className="soft">, </span> : null}
          <ReaderMark standing={standing}>{readers}</ReaderMark>
        </span>
      )}
    </>
  );
}

export function ZincCell({ code, piece }: CellProps) {
  const { zinc } = piece;
  if (zinc === null || zinc.mean_um === null)
    return <ToDo href={hrefs.zincOf(code, piece.piece)}>{text.board.noZinc}</ToDo>;
  return (
    <>
      <span className="line">
        <Figure value={zinc.mean_um} unit="um" />
      </span>
      {zinc.leastLinkMean_um === null || zinc.leastLinkMean_um === zinc.mean_um ? null : (
        <span className="soft small">{text.board.least(figureText({ value: zinc.leastLinkMean_um, unit: 'um' }))}</span>
      )}
    </>
  );
}

function Standing({ judgements, children }: { readonly judgements: readonly Judgement[]; readonly children?: string }) {
  if (judgements.length === 0) return null;
  const verdict = standingOf(judgements.map((one) => one.verdict));
  return (
    <VerdictMark verdict={verdict}>
      {text.verdict[verdict]}
      {children ? <span className="soft">, {children}</span> : null}
    </VerdictMark>
  );
}
