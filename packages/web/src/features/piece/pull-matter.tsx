import type { PieceFinding, ProductFinding, PullFinding } from '@provinghouse/contract';
import { MeasuredOrigin } from '../../components/measured-origin.tsx';
import { useCurve } from '../../lib/requests/curve.ts';
import { text } from '../../lib/text.ts';
import { EventTable } from './event-table.tsx';
import { ReadingTable } from './reading-table.tsx';
import { TraceFigure } from './trace-figure.tsx';

interface PullMatterProps {
  readonly code: string;
  readonly piece: PieceFinding;
  readonly product: ProductFinding;
}

/** The pull of a piece: what it may be used for, its trace, and what the trace says. */
export function PullMatter({ code, piece, product }: PullMatterProps) {
  const { pull } = piece;
  if (pull === null) return <p className="soft">{text.piece.notPulled}</p>;
  return (
    <>
      <PullUse pull={pull} />
      {pull.reading === null ? (
        <p className="soft">{text.piece.keyed}</p>
      ) : (
        <div className="pull-spread">
          <div>
            <Trace code={code} piece={piece} product={product} pull={pull} />
            <EventTable reading={pull.reading} />
          </div>
          <ReadingTable reading={pull.reading} />
        </div>
      )}

      {piece.otherPulls.length === 0 ? null : <p className="soft">{text.piece.others(piece.otherPulls.join(', '))}</p>}
    </>
  );
}

function PullUse({ pull }: { readonly pull: PullFinding }) {
  return (
    <div className="pull-use">
      {pull.maximum === null ? null : (
        <span className="pull-maximum">
          <MeasuredOrigin measured={pull.maximum} name={text.piece.maximum} />
        </span>
      )}
      <div className="pull-words">
        <p>
          {pull.maximum === null ? null : <span className="soft">{text.piece.maximum}, </span>}
          {text.piece.use[pull.use]}
          {pull.reasons.length === 0 ? '' : `. ${pull.reasons.join(' ')}`}
        </p>
        {pull.note === null ? null : <p className="soft">{text.piece.operatorNote(pull.note)}</p>}
      </div>
    </div>
  );
}

function Trace({ code, piece, product, pull }: PullMatterProps & { readonly pull: PullFinding }) {
  const curve = useCurve(code, pull.pull);
  if (pull.reading === null) return null;
  if (curve.state === 'reading') {
    return (
      <p className="trace-waiting soft" role="status">
        {text.trace.loading}
      </p>
    );
  }
  if (curve.state === 'at fault') {
    return (
      <p className="trace-waiting">
        {text.trace.missing} {curve.fault.detail}
      </p>
    );
  }
  return <TraceFigure piece={piece} product={product} reading={pull.reading} curve={curve.record} />;
}
