import type { ProductFinding } from '@provinghouse/contract';
import type { ValueForMoney, WorthTable } from '@provinghouse/core';
import { FigureOrigin } from '../../components/figure-origin.tsx';
import { text } from '../../lib/text.ts';

interface ValueTableProps {
  readonly products: readonly ProductFinding[];
  /** The same worths with their limits, told in sentences. */
  readonly worth: ValueForMoney;
}

/** What a metre weighs and costs, and how much force that buys: each figure opens to its limits. */
export function ValueTable({ products, worth }: ValueTableProps) {
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
          <ValueRow key={product.product} product={product} worth={worth} />
        ))}
      </tbody>
    </table>
  );
}

interface ValueRowProps {
  readonly product: ProductFinding;
  readonly worth: ValueForMoney;
}

function ValueRow({ product, worth }: ValueRowProps) {
  const { valueHead: head } = text.findings;
  const currency = product.currency ?? '';
  const figures = [
    [product.marginOverMinimum_pct, '%', head.margin, text.method.margin, worth.margin],
    [product.massPerMetre_kg_per_m, 'kg/m', head.mass, text.method.mass, null],
    [product.forcePerMass_kN_m_per_kg, 'kN m/kg', head.perMass, text.method.perMass, worth.forcePerMass],
    [product.pricePerMetre, `${currency}/m`, head.price, text.method.price, null],
    [product.forcePerPrice_kN_m, `kN m per ${currency}`, head.perPrice, text.method.perPrice, worth.forcePerPrice],
  ] as const;
  return (
    <tr>
      <th scope="row">{product.product}</th>
      {figures.map(([value, unit, name, method, told]) => (
        <td key={unit} className="num">
          <FigureOrigin name={`${product.product}, ${name}`} value={value} unit={unit}>
            <p>{method}</p>
            <WorthTold name={product.product} table={told} />
          </FigureOrigin>
        </td>
      ))}
    </tr>
  );
}

/** What the worth of a product is with its limits, how it was had, and what to doubt. */
function WorthTold({ name, table }: { readonly name: string; readonly table: WorthTable | null }) {
  const found = table?.worths.find((worth) => worth.name === name);
  if (!table || !found) return null;
  return (
    <>
      <p>{found.sentence}</p>
      <p className="small soft">
        {text.origin.method}: {table.method}
      </p>
      {found.doubts.map((doubt) => (
        <p key={doubt} className="small">
          {doubt}
        </p>
      ))}
    </>
  );
}
