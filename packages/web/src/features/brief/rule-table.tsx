import type { ProductFinding } from '@provinghouse/contract';
import { type Quantity, quantityNames, type Specification } from '@provinghouse/core';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { text } from '../../lib/text.ts';

interface Rules {
  readonly specification: Specification;
  readonly products: readonly string[];
}

/** Products sold under one specification share a column. */
function rulesOf(products: readonly ProductFinding[]): Rules[] {
  const groups = Map.groupBy(products, ({ specification }) => `${specification.title} ${specification.edition}`);
  return [...groups.values()].flatMap(([first, ...rest]) =>
    first ? [{ specification: first.specification, products: [first, ...rest].map(({ product }) => product) }] : [],
  );
}

/** Every limit that applies, with the marks of its source. */
export function RuleTable({ products }: { readonly products: readonly ProductFinding[] }) {
  const rules = rulesOf(products);
  const quantities = [
    ...new Set(rules.flatMap(({ specification }) => specification.limits.map(({ quantity }) => quantity))),
  ];
  return (
    <section className="pad-scroll" aria-label={text.brief.rulesCaption}>
      <table className="leaf rules">
        <caption className="for-ears">{text.brief.rulesCaption}</caption>
        <thead>
          <tr>
            <th scope="col">{text.brief.quantity}</th>
            {rules.map(({ specification, products: under }) => (
              <th key={specification.title} scope="col">
                <span className="line rules-title">{specification.title}</span>
                <span className="line">{text.brief.edition(specification.edition)}</span>
                {under.join(', ')}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {quantities.map((quantity) => (
            <tr key={quantity}>
              <th scope="row">{quantityNames[quantity]}</th>
              {rules.map(({ specification }) => (
                <td key={specification.title}>
                  <Limits specification={specification} quantity={quantity} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface LimitsProps {
  readonly specification: Specification;
  readonly quantity: Quantity;
}

function Limits({ specification, quantity }: LimitsProps) {
  const limits = specification.limits.filter((limit) => limit.quantity === quantity);
  if (limits.length === 0) return <span className="soft">{text.brief.noRule}</span>;
  return limits.map((limit) => (
    <span key={limit.statement} className="line">
      <LimitOrigin limit={limit} />
    </span>
  ));
}
