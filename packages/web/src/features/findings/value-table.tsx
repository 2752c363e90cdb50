import type { ProductFinding } from '@provinghouse/contract';
import { FigureOrigin } from '../../components/figure-origin.tsx';
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
  const { valueHead: head } = text.findings;
  const currency = product.currency ?? '';
  const figures = [
    [product.marginOverMinimum_pct, '%', head.margin, text.method.margin],
    [product.massPerMetre_kg_per_m, 'kg/m', head.mass, text.method.mass],
    [product.forcePerMass_kN_m_per_kg, 'kN m/kg', head.perMass, text.method.perMass],
    [product.pricePerMetre, `${currency}/m`, head.price, text.method.price],
    [product.forcePerPrice_kN_m, `kN m per ${currency}`, head.perPrice, text.method.perPrice],
  ] as const;
  return (
    <tr>
      <th scope="row">{product.product}</th>
      {figures.map(([value, unit, name, method]) => (
        <td key={unit} className="num">
          <FigureOrigin name={`${product.product}, ${name}`} value={value} unit={unit}>
            <p>{method}</p>
          </FigureOrigin>
        </td>
      ))}
    </tr>
  );
}
