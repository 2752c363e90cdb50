import type { ProductBrief } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { Planned } from './planned.tsx';

/** What passes promise of the pieces that were not pulled. */
export function PassTable({ products }: { readonly products: readonly ProductBrief[] }) {
  const { passesHead: head } = text.brief;
  return (
    <table className="leaf plan plan-narrow">
      <caption className="for-ears">{text.brief.passesCaption}</caption>
      <thead>
        <tr>
          <th scope="col">{head.product}</th>
          {[head.all, head.found, head.needed].map((name) => (
            <th key={name} scope="col" className="num">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {products.map((product) => (
          <PassRow key={product.product} product={product} />
        ))}
      </tbody>
    </table>
  );
}

function PassRow({ product: { product, passes } }: { readonly product: ProductBrief }) {
  const { passesHead: head } = text.brief;
  return (
    <tr>
      <th scope="row">{product}</th>
      <td className="num">
        <Planned name={`${product}, ${head.all}`} planned={passes.ifAllPass} />
      </td>
      <td className="num">
        {passes.found === null ? (
          <span className="soft">{text.brief.notJudged}</span>
        ) : (
          <Planned name={`${product}, ${head.found}`} planned={passes.found} />
        )}
      </td>
      <td className="num">
        <Planned name={`${product}, ${head.needed}`} planned={passes.piecesFor95} />
      </td>
    </tr>
  );
}
