import type { ProductJudgement } from '@provinghouse/contract';
import { quantityNames } from '@provinghouse/core';
import { Link } from 'wouter';
import { Opens } from '../../components/opens.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { verdicts } from '../../lib/verdicts.ts';

interface RequirementVerdictProps {
  readonly code: string;
  readonly judgement: ProductJudgement;
  readonly isOneLine?: boolean;
}

/** The verdict of a product on one requirement with its count; opens to the pieces that decide it. */
export function RequirementVerdict({ code, judgement, isOneLine = false }: RequirementVerdictProps) {
  const all = verdicts.reduce((sum, verdict) => sum + judgement.counts[verdict], 0);
  return (
    <Opens title={quantityNames[judgement.quantity]} content={<Deciding code={code} judgement={judgement} />}>
      <VerdictMark verdict={judgement.verdict} />{' '}
      <span className={isOneLine ? 'soft small' : 'line soft small'}>
        {text.findings.count(judgement.counts[judgement.verdict], all, judgement.verdict)}
      </span>
    </Opens>
  );
}

function Deciding({ code, judgement }: { readonly code: string; readonly judgement: ProductJudgement }) {
  return (
    <>
      <p>{judgement.sentence}</p>
      {judgement.deciding.length === 0 ? null : (
        <ul aria-label={text.findings.deciding}>
          {judgement.deciding.map((piece) => (
            <li key={piece}>
              <Link href={hrefs.piece(code, piece)}>{piece}</Link>
            </li>
          ))}
        </ul>
      )}
      <dl className="facts">
        {verdicts.map((verdict) => (
          <div key={verdict} className="fact">
            <dt>{text.verdict[verdict]}</dt>
            <dd>{judgement.counts[verdict]}</dd>
          </div>
        ))}
      </dl>
      <p className="small soft">{text.findings.how.standing}</p>
    </>
  );
}
