import type { PieceFinding } from '@provinghouse/contract';
import { type Judgement, type Quantity, quantityUnits, standingOf } from '@provinghouse/core';
import { Figure, Measured } from '../../components/figure.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

interface CellProps {
  readonly piece: PieceFinding;
}

const isDimension = (quantity: Quantity) => quantityUnits[quantity] === 'mm' && quantity !== 'bendDeflection';

/** Bar and limits in short: the mean diameter, and how many of the gauged requirements it meets. */
export function GaugingCell({ piece }: CellProps) {
  const { gauging } = piece;
  if (gauging === null) return <span className="soft">{text.board.notGauged}</span>;
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
export function PullCell({ piece }: CellProps) {
  const { pull } = piece;
  if (pull === null) return <span className="soft">{text.board.notPulled}</span>;
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

export function BreakCell({ piece }: CellProps) {
  const first = piece.breaks[0];
  if (!first) return <span className="soft">{text.board.notRead}</span>;
  return (
    <>
      <span className="line">{first.mode}</span>
      <span className="soft small">
        {text.board.breakAt(first.position, first.link)}
        {piece.examinersDiffer ? `, ${text.board.differ}` : ''}
      </span>
    </>
  );
}

export function ZincCell({ piece }: CellProps) {
  const { zinc } = piece;
  if (zinc === null || zinc.mean_um === null) return <span className="soft">{text.board.noZinc}</span>;
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
