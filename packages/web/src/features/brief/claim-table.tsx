import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { Figure } from '../../components/figure.tsx';
import { text } from '../../lib/text.ts';

/** What each product is sold as, what it claims, and how many pieces were prepared of it. */
export function ClaimTable({ finding }: { readonly finding: CampaignFinding }) {
  const { claimHead: head } = text.brief;
  return (
    <table className="leaf claims">
      <caption className="for-ears">{text.brief.claimsCaption}</caption>
      <thead>
        <tr>
          {[head.product, head.sold, head.claim].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
          {[head.force, head.price, head.pieces].map((name) => (
            <th key={name} scope="col" className="num">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {finding.products.map((product) => (
          <ClaimRow key={product.product} product={product} />
        ))}
      </tbody>
    </table>
  );
}

function ClaimRow({ product }: { readonly product: ProductFinding }) {
  return (
    <tr>
      <th scope="row">
        <strong className="line brief-supplier">{product.supplier}</strong>
        <span className="soft small">{product.product}</span>
      </th>
      <td>{product.description ?? <span className="soft">{text.notRecorded}</span>}</td>
      <td>{product.specification.title}</td>
      <td className="num">
        <Figure value={product.claimedBreakingForce_kN} unit="kN" />
      </td>
      <td className="num">
        <Figure value={product.pricePerMetre} unit={`${product.currency ?? ''}/m`} />
      </td>
      <td className="num">{product.pieces.length}</td>
    </tr>
  );
}
