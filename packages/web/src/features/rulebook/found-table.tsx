import { type ListedSpecification, type Quantity, quantityNames } from '@provinghouse/core';
import { memo } from 'react';
import { Link } from 'wouter';
import { limitText } from '../../lib/limit-text.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { comparisonAddress } from './comparison-address.ts';
import { keyOf } from './look-up.ts';
import { emptySearch, searchAddress } from './search-address.ts';

interface FoundTableProps {
  readonly found: readonly ListedSpecification[];
  /** A quantity that was searched for gets a column of its own. */
  readonly quantity: Quantity | null;
  readonly compareWith: string | null;
}

const words = text.rulebook;
const usual: readonly Quantity[] = ['breakingForce', 'proofForce', 'workingLoadLimit'];

/** The specifications that answer a search, with the limits a buyer asks for first. */
export const FoundTable = memo(function FoundTable({ found, quantity, compareWith }: FoundTableProps) {
  const columns: readonly Quantity[] =
    quantity === null || usual.includes(quantity) ? usual : ['breakingForce', 'workingLoadLimit', quantity];
  return (
    <section className="pad-scroll" aria-label={words.caption}>
      <table className="leaf found">
        <caption className="for-ears">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.head.specification}</th>
            {columns.map((column) => (
              <th key={column} scope="col">
                {quantityNames[column]}
              </th>
            ))}
            <th scope="col">{words.head.pick}</th>
          </tr>
        </thead>
        {[...Map.groupBy(found, ({ entry }) => entry).entries()].map(([entry, under]) => (
          <tbody key={entry.id}>
            <tr>
              <th scope="rowgroup" colSpan={columns.length + 2} className="found-standard">
                <strong>{entry.standard}</strong> {entry.isOwn ? <span className="badge">{words.own}</span> : null}{' '}
                <span className="soft">
                  {entry.title}. {words.trust}: {words.confidence[entry.confidence] ?? entry.confidence}.
                </span>
              </th>
            </tr>
            {under.map((one) => (
              <FoundRow key={keyOf(one)} one={one} columns={columns} compareWith={compareWith} />
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
});

interface FoundRowProps {
  readonly one: ListedSpecification;
  readonly columns: readonly Quantity[];
  readonly compareWith: string | null;
}

function FoundRow({ one, columns, compareWith }: FoundRowProps) {
  const { entry, specification, isListed } = one;
  const name = specification.title.replace(`${entry.standard}, `, '');
  const key = keyOf(one);
  return (
    <tr>
      <th scope="row" className="found-name">
        <Link className="found-way" href={hrefs.specification(key)} aria-label={specification.title}>
          {name}
        </Link>
        {isListed ? null : <span className="badge">{words.byRule}</span>}
      </th>
      {columns.map((column) => {
        const limit = specification.limits.find((candidate) => candidate.quantity === column);
        return (
          <td key={column} className={limit === undefined ? 'soft' : 'figure'}>
            {limit === undefined ? text.limit.none : limitText(limit)}
          </td>
        );
      })}
      <td>
        {compareWith === null ? (
          <Link
            className="found-way"
            href={hrefs.rulebook(searchAddress.write({ ...emptySearch, compareWith: key }))}
            aria-label={words.pickLabel(specification.title)}
          >
            {words.pick}
          </Link>
        ) : (
          <Link
            className="found-way"
            href={hrefs.comparison(
              comparisonAddress.write({ first: compareWith, second: key, onlyDifferences: false }),
            )}
            aria-label={words.pickSecondLabel(specification.title)}
          >
            {words.pickSecond}
          </Link>
        )}
      </td>
    </tr>
  );
}
