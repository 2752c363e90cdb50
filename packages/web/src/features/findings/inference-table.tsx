import type { ProductFinding, ProductInference } from '@provinghouse/contract';
import { Figure } from '../../components/figure.tsx';
import { Told } from '../../components/told.tsx';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

/** What a few pieces let one say of the next ones: each figure opens to its sentence, method and doubts. */
export function InferenceTable({ products }: { readonly products: readonly ProductFinding[] }) {
  const { inferenceHead: head } = text.findings;
  return (
    <table className="leaf summary">
      <caption>
        <h3>{text.findings.inference}</h3>
        <span className="small">{text.findings.inferenceHow}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">{head.product}</th>
          {[head.mean, head.bound, head.characteristic].map((name) => (
            <th key={name} scope="col" className="num">
              {name}
            </th>
          ))}
          <th scope="col">{head.outlier}</th>
          <th scope="col">{head.normality}</th>
        </tr>
      </thead>
      <tbody>
        {products.map((product) => (
          <InferenceRow key={product.product} name={product.product} inference={product.inference} />
        ))}
      </tbody>
    </table>
  );
}

function InferenceRow({ name, inference }: { readonly name: string; readonly inference: ProductInference }) {
  const { inferenceHead: head, standsOut } = text.findings;
  const { mean, tolerance, characteristic, outlier, normality } = inference;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="num">
        <Told title={`${name}, ${head.mean}`} told={mean}>
          {mean.lower === null || mean.upper === null ? text.none : rangeOf(mean.lower, mean.upper)}
        </Told>
      </td>
      <td className="num">
        <Told title={`${name}, ${head.bound}`} told={tolerance}>
          <Figure value={tolerance.lower} unit="kN" />
        </Told>
      </td>
      <td className="num">
        <Told title={`${name}, ${head.characteristic}`} told={characteristic}>
          <Figure value={characteristic.characteristic} unit="kN" />
        </Told>
      </td>
      <td>
        <Told title={`${name}, ${head.outlier}`} told={outlier}>
          {outlier.standsOut === null ? standsOut.cannotTell : outlier.standsOut ? standsOut.yes : standsOut.no}
        </Told>
      </td>
      <td>
        <Told title={`${name}, ${head.normality}`} told={normality}>
          {normality.p === null ? standsOut.cannotTell : text.findings.chance(normality.p)}
        </Told>
      </td>
    </tr>
  );
}

function rangeOf(lower: number, upper: number): string {
  const from = figureText({ value: lower, unit: 'kN' }).replace(/\u00a0.*$/, '');
  return text.limit.between(from, figureText({ value: upper, unit: 'kN' }));
}
