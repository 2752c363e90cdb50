import type { CampaignFinding, ProductFinding, ProductJudgement } from '@provinghouse/contract';
import { quantityNames } from '@provinghouse/core';
import { Link } from 'wouter';
import { Opens } from '../../components/opens.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { verdicts } from '../../lib/verdicts.ts';

interface RequirementTableProps {
  readonly finding: CampaignFinding;
}

/** Requirements down, products across: each cell the verdict, the count, and behind it the pieces that decide. */
export function RequirementTable({ finding }: RequirementTableProps) {
  const { products } = finding;
  const quantities = [...new Set(products.flatMap((product) => product.judgements.map((one) => one.quantity)))];
  return (
    <section className="pad-scroll" aria-label={text.findings.caption}>
      <table className="leaf requirements">
        <caption className="for-ears">{text.findings.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{text.findings.requirement}</th>
            {products.map((product) => (
              <th key={product.product} scope="col">
                <span className="line requirements-supplier">{product.supplier}</span>
                {product.specification.title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {quantities.map((quantity) => (
            <tr key={quantity}>
              <th scope="row">{quantityNames[quantity]}</th>
              {products.map((product) => (
                <td key={product.product}>
                  <Cell
                    code={finding.campaign.campaign}
                    judgement={product.judgements.find((one) => one.quantity === quantity)}
                  />
                </td>
              ))}
            </tr>
          ))}
          <OverallRow products={products} />
        </tbody>
      </table>
    </section>
  );
}

function OverallRow({ products }: { readonly products: readonly ProductFinding[] }) {
  return (
    <tr className="requirements-overall">
      <th scope="row">{text.findings.overall}</th>
      {products.map((product) => (
        <td key={product.product}>
          <VerdictMark verdict={product.standing} />
        </td>
      ))}
    </tr>
  );
}

interface CellProps {
  readonly code: string;
  readonly judgement: ProductJudgement | undefined;
}

function Cell({ code, judgement }: CellProps) {
  if (!judgement) return <span className="soft">{text.findings.notAsked}</span>;
  const all = verdicts.reduce((sum, verdict) => sum + judgement.counts[verdict], 0);
  return (
    <Opens title={quantityNames[judgement.quantity]} content={<Deciding code={code} judgement={judgement} />}>
      <VerdictMark verdict={judgement.verdict} />
      <span className="line soft small">
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
    </>
  );
}
