import type { ProductFinding } from '@provinghouse/contract';
import { Figure } from '../../components/figure.tsx';
import { text } from '../../lib/text.ts';

/** What a metre weighs and costs, and how much force that buys. */
export function ValueTable({ products }: { readonly products: readonly ProductFinding[] }) {
  const { valueHead: head } = text.findings;
  return (
    <table className="leaf summary">
      <caption>
        <h3>{text.findings.value}</h3>
        <span className="small">{text.findings.valueHow}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">{head.product}</th>
          {[head.margin, head.mass, head.perMass, head.price, head.perPrice].map((name) => (
            <th key={name} scope="col" className="num">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {products.map((product) => (
          <ValueRow key={product.product} product={product} />
        ))}
      </tbody>
    </table>
  );
}

function ValueRow({ product }: { readonly product: ProductFinding }) {
  const currency = product.currency ?? '';
  const figures = [
    [product.marginOverMinimum_pct, '%'],
    [product.massPerMetre_kg_per_m, 'kg/m'],
    [product.forcePerMass_kN_m_per_kg, 'kN m/kg'],
    [product.pricePerMetre, `${currency}/m`],
    [product.forcePerPrice_kN_m, `kN m per ${currency}`],
  ] as const;
  return (
    <tr>
      <th scope="row">{product.product}</th>
      {figures.map(([value, unit]) => (
        <td key={unit} className="num">
          <Figure value={value} unit={unit} />
        </td>
      ))}
    </tr>
  );
}
