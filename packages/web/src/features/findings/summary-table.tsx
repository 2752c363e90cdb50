import type { ProductFinding, ProductSummary } from '@provinghouse/contract';
import { Figure, Spread } from '../../components/figure.tsx';
import { Opens } from '../../components/opens.tsx';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

const summaries = ['breakingForce', 'elongation', 'steelStress'] as const;

/** For each quantity a table: products down, count, mean, scatter, range, and what was left out and why. */
export function SummaryTables({ products }: { readonly products: readonly ProductFinding[] }) {
  return summaries.map((key) => (
    <table key={key} className="leaf summary">
      <caption>
        <h3>{text.findings.summaries[key]}</h3>
      </caption>
      <colgroup>
        <col />
        <col className="col-n" />
        <col span={2} />
        <col className="col-range" />
        <col className="col-least" />
        <col className="col-rest" />
      </colgroup>
      <SummaryHead />
      <tbody>
        {products.map((product) => (
          <SummaryRow key={product.product} name={product.product} summary={product[key]} />
        ))}
      </tbody>
    </table>
  ));
}

function SummaryHead() {
  const { summaryHead: head } = text.findings;
  return (
    <thead>
      <tr>
        <th scope="col">{head.product}</th>
        {[head.n, head.mean, head.sd, head.range].map((name) => (
          <th key={name} scope="col" className="num">
            {name}
          </th>
        ))}
        <th scope="col">{head.atLeast}</th>
        <th scope="col">{head.excluded}</th>
      </tr>
    </thead>
  );
}

function SummaryRow({ name, summary }: { readonly name: string; readonly summary: ProductSummary }) {
  const { unit, n, mean, sd, least, greatest } = summary;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="num">{n}</td>
      <td className="num">
        <Opens title={name} content={<p>{summary.sentence}</p>}>
          <Figure value={mean} unit={unit} />
        </Opens>
      </td>
      <td className="num">
        {n === 1 ? <span className="soft small">{text.findings.noScatter}</span> : <Spread value={sd} unit={unit} />}
      </td>
      <td className="num figure">{least === null || greatest === null ? text.none : rangeOf(least, greatest, unit)}</td>
      <td>
        {summary.atLeast.map((one) => (
          <span key={one.piece} className="line">
            {figureText({ value: one.value, unit })} <span className="soft small">{one.piece}</span>
          </span>
        ))}
      </td>
      <td>
        {summary.excluded.map((one) => (
          <span key={one.piece} className="line small">
            {one.piece}: <span className="soft">{one.reason}</span>
          </span>
        ))}
      </td>
    </tr>
  );
}

function rangeOf(least: number, greatest: number, unit: string): string {
  const from = figureText({ value: least, unit }).replace(/\u00a0.*$/, '');
  return text.limit.between(from, figureText({ value: greatest, unit }));
}
