import type {
  BriefFinding,
  CampaignFinding,
  ProductBrief,
  ProductFinding,
  ProductPlan,
  ShowingPlan,
} from '@provinghouse/contract';
import { limitText } from '../../lib/limit-text.ts';
import { text } from '../../lib/text.ts';
import { Planned } from './planned.tsx';

interface ShowingTableProps {
  readonly finding: CampaignFinding;
  readonly brief: BriefFinding;
}

/** Chances to show that the breaking force lies above the minimum, as assumed and as found, product by product. */
export function ShowingTable({ finding, brief }: ShowingTableProps) {
  return (
    <section className="pad-scroll" aria-label={text.brief.showingCaption}>
      <table className="leaf plan showing">
        <caption className="for-ears">{text.brief.showingCaption}</caption>
        <ShowingHead />
        {brief.products.map((product) => (
          <ShowingRows
            key={product.product}
            brief={product}
            product={finding.products.find((one) => one.product === product.product)}
          />
        ))}
      </table>
    </section>
  );
}

function ShowingHead() {
  const { showingHead: head } = text.brief;
  const names = [head.chance, head.for80, head.for90, head.needs];
  return (
    <thead>
      <tr>
        <th scope="col" rowSpan={2}>
          {head.basis}
        </th>
        {[head.mean, head.scatter, head.all].map((name) => (
          <th key={name} scope="col" rowSpan={2} className="num">
            {name}
          </th>
        ))}
        {[head.ofMean, head.ofShare].map((name) => (
          <th key={name} scope="colgroup" colSpan={names.length} className="plan-group">
            {name}
          </th>
        ))}
      </tr>
      <tr>
        {[head.ofMean, head.ofShare].flatMap((group) =>
          names.map((name) => (
            <th key={`${group} ${name}`} scope="col" className="num">
              {name}
            </th>
          )),
        )}
      </tr>
    </thead>
  );
}

interface ShowingRowsProps {
  readonly brief: ProductBrief;
  readonly product: ProductFinding | undefined;
}

function ShowingRows({ brief, product }: ShowingRowsProps) {
  const minimum = product?.specification.limits.find(({ quantity }) => quantity === 'breakingForce');
  return (
    <tbody>
      <tr className="plan-product">
        <th scope="rowgroup" colSpan={12}>
          <strong className="brief-supplier">{product?.supplier ?? ''}</strong>{' '}
          <span className="soft">
            {[
              brief.product,
              minimum ? text.brief.minimum(limitText(minimum)) : text.brief.noMinimum,
              text.brief.prepared(brief.pieces, brief.counted),
            ].join(', ')}
          </span>
        </th>
      </tr>
      {brief.plans.map((plan) => (
        <PlanRow key={plan.basis} product={brief.product} plan={plan} />
      ))}
    </tbody>
  );
}

function PlanRow({ product, plan }: { readonly product: string; readonly plan: ProductPlan }) {
  const { showingHead: head, basis } = text.brief;
  const name = (what: string) => `${product}, ${basis[plan.basis]}: ${what}`;
  return (
    <tr>
      <th scope="row">{basis[plan.basis]}</th>
      <td className="num">
        <Planned name={name(head.mean)} planned={plan.mean_kN} />
      </td>
      <td className="num">
        <Planned name={name(head.scatter)} planned={plan.cov_pct} />
      </td>
      <td className="num">
        <Planned name={name(head.all)} planned={plan.allPass} />
      </td>
      <Showing name={name(head.ofMean)} plan={plan.mean} />
      <Showing name={name(head.ofShare)} plan={plan.share} />
    </tr>
  );
}

function Showing({ name, plan }: { readonly name: string; readonly plan: ShowingPlan }) {
  const { showingHead: head, noPieces } = text.brief;
  return (
    <>
      <td className="num plan-first">
        <Planned name={`${name}, ${head.chance}`} planned={plan.chance} />
      </td>
      <td className="num">
        <Planned name={`${name}, ${head.for80}`} planned={plan.piecesFor80} none={noPieces} />
      </td>
      <td className="num">
        <Planned name={`${name}, ${head.for90}`} planned={plan.piecesFor90} none={noPieces} />
      </td>
      <td className="num">
        <Planned name={`${name}, ${head.needs}`} planned={plan.neededMean_kN} none={noPieces} />
      </td>
    </>
  );
}
