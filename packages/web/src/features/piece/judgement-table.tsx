import { type Judgement, quantityNames } from '@provinghouse/core';
import { ColumnHeads } from '../../components/column-heads.tsx';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { MeasuredOrigin } from '../../components/measured-origin.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { acceptanceText } from '../../lib/limit-text.ts';
import { text } from '../../lib/text.ts';

interface JudgementTableProps {
  readonly judgements: readonly Judgement[];
  /** The decision rule in a sentence. */
  readonly rule: string;
}

/** Every requirement against what was measured, with the rule that decided it. */
export function JudgementTable({ judgements, rule }: JudgementTableProps) {
  const { judgementHead: head } = text.piece;
  return (
    <div className="pad-scroll">
      <table className="leaf judgements">
        <caption>{rule}</caption>
        <ColumnHeads names={[head.requirement, head.limit, head.value, head.accept, head.verdict]} />
        <tbody>
          {judgements.map((judgement) => (
            <JudgementRow key={judgement.limit.statement} judgement={judgement} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function JudgementRow({ judgement }: { readonly judgement: Judgement }) {
  const { limit, measured, verdict, reason } = judgement;
  const acceptance = acceptanceText(judgement);
  const name = quantityNames[limit.quantity];
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <LimitOrigin limit={limit} />
      </td>
      <td>
        {measured === null ? (
          <span className="soft">{text.notRecorded}</span>
        ) : (
          <MeasuredOrigin measured={measured} name={name} />
        )}
      </td>
      <td>
        {acceptance === null ? <span className="soft">{text.none}</span> : <span className="figure">{acceptance}</span>}
      </td>
      <td className="judgement-verdict">
        <VerdictMark verdict={verdict} />
        <span className="line soft small">
          {reason} {judgement.probability === null ? null : text.piece.chance(judgement.probability)}
        </span>
      </td>
    </tr>
  );
}
