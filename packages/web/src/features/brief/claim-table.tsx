import type { CampaignFinding, Row, RowHeld } from '@provinghouse/contract';
import type { OwnStandard } from '@provinghouse/core';
import { Figure } from '../../components/figure.tsx';
import { lookUp } from '../../lib/specification-of.ts';
import { text } from '../../lib/text.ts';

interface ClaimTableProps {
  readonly products: readonly RowHeld<'products'>[];
  readonly own: readonly OwnStandard[];
  /** Null while it is being judged, or cannot be. */
  readonly finding: CampaignFinding | null;
  readonly isBlind: boolean;
  readonly onCorrect?: (held: RowHeld<'products'>) => void;
  readonly onWithdraw?: (held: RowHeld<'products'>) => void;
}

/** What each product is sold as, what it claims, and how many pieces were prepared of it. */
export function ClaimTable({ products, own, finding, isBlind, onCorrect, onWithdraw }: ClaimTableProps) {
  const { claimHead: head, desk } = text.brief;
  return (
    <section className="pad-scroll" aria-label={text.brief.claimsCaption}>
      <table className="leaf claims">
        <caption className="for-ears">{text.brief.claimsCaption}</caption>
        <thead>
          <tr>
            {[head.product, head.sold, head.claim].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
            {[head.force, head.price, head.pieces].map((name) => (
              <th key={name} scope="col" className="num">
                {name}
              </th>
            ))}
            {onCorrect ? (
              <th scope="col" className="num">
                <span className="for-ears">{desk.claims.actions}</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {products.map((held) => (
            <ClaimRow
              key={held.id}
              held={held}
              own={own}
              finding={finding}
              isBlind={isBlind}
              {...(onCorrect ? { onCorrect } : {})}
              {...(onWithdraw ? { onWithdraw } : {})}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function ClaimRow({
  held,
  own,
  finding,
  isBlind,
  onCorrect,
  onWithdraw,
}: Omit<ClaimTableProps, 'products'> & { readonly held: RowHeld<'products'> }) {
  const { body } = held;
  const judged = finding?.products.find(({ product }) => product === body.product);
  const words = text.brief.desk.claims;
  return (
    <tr>
      <th scope="row">
        <strong className="line brief-supplier">{isBlind ? body.product : body.supplier}</strong>
        {isBlind ? null : <span className="soft small brief-code">{body.product}</span>}
      </th>
      <td>{body.description ?? <span className="soft">{text.notRecorded}</span>}</td>
      <td>{judged?.specification.title ?? titleOf(body, own)}</td>
      <td className="num">
        <Figure value={body.claimed_breaking_force_kN} unit="kN" />
      </td>
      <td className="num">
        <Figure value={body.price_per_metre} unit={`${body.currency ?? ''}/m`} />
      </td>
      <td className="num">{judged?.pieces.length ?? <span className="soft">{text.none}</span>}</td>
      {onCorrect ? (
        <td className="num claim-keys">
          <button type="button" className="press press-small" onClick={() => onCorrect(held)}>
            {words.correct}
            <span className="for-ears"> {words.ofProduct(body.product)}</span>
          </button>
          <button type="button" className="press press-small" onClick={() => onWithdraw?.(held)}>
            {words.withdraw}
            <span className="for-ears"> {words.ofProduct(body.product)}</span>
          </button>
        </td>
      ) : null}
    </tr>
  );
}

function titleOf({ specification, grade, nominal_size_mm }: Row<'products'>, own: readonly OwnStandard[]): string {
  const found = lookUp({ specification, grade: grade ?? '', size_mm: nominal_size_mm }, own);
  return found !== null && 'specification' in found ? found.specification.title : specification;
}
