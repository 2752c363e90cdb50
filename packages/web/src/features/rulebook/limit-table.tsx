import { type Limit, quantityNames, type Specification } from '@provinghouse/core';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { unitSign } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { citationsOf } from './citation-number.ts';

const words = text.rulebook;

/** Every limit with its marks, its place in the rulebook, the numbers of its sources and what to know of it. */
export function LimitTable({ specification }: { readonly specification: Specification }) {
  const numbers = citationsOf(specification.limits);
  return (
    <section className="pad-scroll" aria-label={words.limitsCaption(specification.title)}>
      <table className="leaf limits">
        <caption className="for-ears">{words.limitsCaption(specification.title)}</caption>
        <thead>
          <tr>
            {Object.entries(words.limitHead).map(([key, name]) => (
              <th key={key} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {specification.limits.map((limit) => (
            <tr key={limit.statement}>
              <th scope="row" className="limits-name">
                {rowName(limit)}
              </th>
              <td>
                <LimitOrigin limit={limit} />
                {limit.nominal === null || (limit.lower === null && limit.upper === null) ? null : (
                  <span className="line soft small">{text.limit.nominal(`${limit.nominal}\u00a0${limit.unit}`)}</span>
                )}
              </td>
              <td className="soft">{limit.place}</td>
              <td className="figure">
                {limit.provenance.citations.map(({ id }) => numbers.findIndex((one) => one.id === id) + 1).join(', ')}
              </td>
              <td className="limits-note">
                {limit.provenance.note}
                {limit.provenance.alternatives.map(({ value, citation }) => (
                  <span key={`${value} ${citation}`} className="line">
                    {words.alsoPublished(`${value}\u00a0${unitSign(limit.unit)}`, citation)}
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A length over links says over how many. */
export function rowName({ quantity, links }: Pick<Limit, 'quantity' | 'links'>): string {
  return links === null ? quantityNames[quantity] : text.rulebook.overLinks(links);
}
