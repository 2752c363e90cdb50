import type { Limit, LimitComparison, SizeFreeComparison, Specification } from '@provinghouse/core';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { text } from '../../lib/text.ts';
import { changeText, sizeFreeRelation, sizeFreeText, toldChange } from './comparison-text.ts';
import { rowName } from './limit-table.tsx';
import { RelationMark } from './relation-mark.tsx';

interface ComparisonTableProps {
  readonly first: Specification;
  readonly second: Specification;
  readonly rows: readonly LimitComparison[];
  /** The two are of different sizes. */
  readonly hasSizes: boolean;
}

const words = text.rulebook;

/** Quantities down, the two specifications and their relation across. */
export function ComparisonTable({ first, second, rows, hasSizes }: ComparisonTableProps) {
  const caption = words.compareCaption(first.title, second.title);
  return (
    <section className="pad-scroll" aria-label={caption}>
      <table className="leaf compared">
        <caption className="for-ears">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{words.limitHead.quantity}</th>
            <th scope="col">
              <span className="line compared-title">{first.title}</span>
              {first.edition}
            </th>
            <th scope="col">
              <span className="line compared-title">{second.title}</span>
              {second.edition}
            </th>
            <th scope="col">{words.relationHead}</th>
            {hasSizes ? <th scope="col">{words.bySizeHead}</th> : null}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={rowName(row)} className={row.relation === 'same' ? undefined : 'compared-different'}>
              <th scope="row">{rowName(row)}</th>
              <LimitCell limit={row.first} />
              <LimitCell limit={row.second} />
              <td>
                <RelationMark relation={row.relation} change={toldChange(row)} />
              </td>
              {hasSizes ? <SizeFree bySize={row.bySize} /> : null}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function LimitCell({ limit }: { readonly limit: Limit | null }) {
  if (limit === null) return <td className="soft">{words.notAsked}</td>;
  return (
    <td>
      <LimitOrigin limit={limit} />
    </td>
  );
}

function SizeFree({ bySize }: { readonly bySize: SizeFreeComparison | null }) {
  if (bySize === null) return <td className="soft">{text.none}</td>;
  const { first, second, unit, change_pct } = bySize;
  return (
    <td>
      <span className="line">{words.against(sizeFreeText(first, unit), sizeFreeText(second, unit))}</span>
      <RelationMark relation={sizeFreeRelation(bySize)} change={changeText(change_pct)} />
    </td>
  );
}
