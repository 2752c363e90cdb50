import type { DifferenceBrief, SizeBrief } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { Planned } from './planned.tsx';

/** Differences of two means that the pieces prepared can tell, and how many a difference of 5 % takes. */
export function ApartTable({ sizes }: { readonly sizes: readonly SizeBrief[] }) {
  const { apartHead: head } = text.brief;
  if (sizes.every(({ differences }) => differences.length === 0)) return <p className="soft">{text.brief.alone}</p>;
  return (
    <section className="pad-scroll" aria-label={text.brief.apartCaption}>
      <table className="leaf plan">
        <caption className="for-ears">{text.brief.apartCaption}</caption>
        <thead>
          <tr>
            <th scope="col">{head.size}</th>
            <th scope="col">{head.basis}</th>
            {[head.pieces, head.scatter, head.told80, head.told90, head.for80, head.for90, head.among].map((name) => (
              <th key={name} scope="col" className="num">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        {sizes.map((size) => (
          <tbody key={size.nominalSize_mm}>
            {size.differences.map((difference) => (
              <ApartRow key={difference.basis} size={`${size.nominalSize_mm}\u00a0mm`} difference={difference} />
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}

function ApartRow({ size, difference }: { readonly size: string; readonly difference: DifferenceBrief }) {
  const { apartHead: head, basis, noPieces } = text.brief;
  const name = (what: string) => `${size}, ${basis[difference.basis]}: ${what}`;
  const numbers = [
    [head.scatter, difference.cov_pct],
    [head.told80, difference.difference80_pct],
    [head.told90, difference.difference90_pct],
    [head.for80, difference.piecesFor80],
    [head.for90, difference.piecesFor90],
  ] as const;
  return (
    <tr>
      <th scope="row">{size}</th>
      <td>{basis[difference.basis]}</td>
      <td className="num">{difference.pieces}</td>
      {numbers.map(([what, planned]) => (
        <td key={what} className="num">
          <Planned name={name(what)} planned={planned} none={noPieces} />
        </td>
      ))}
      <td className="num">
        {difference.amongAll === null ? (
          <span className="soft">{text.none}</span>
        ) : (
          <Planned name={name(head.among)} planned={difference.amongAll} />
        )}
      </td>
    </tr>
  );
}
