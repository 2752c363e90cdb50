import { type OwnStandard, type Quantity, quantityNames, type Specification } from '@provinghouse/core';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import type { Typed } from '../../lib/entry/draft.ts';
import { lookUp, sizeTyped } from '../../lib/specification-of.ts';
import { text } from '../../lib/text.ts';

const words = text.brief.desk.claims;

interface ClaimLimitsProps {
  readonly typed: Typed;
  readonly own: readonly OwnStandard[];
}

/** Every limit of the specification as it is chosen, each with the marks of its source. */
export function ClaimLimits({ typed, own }: ClaimLimitsProps) {
  const found = lookUp(
    {
      specification: typed.specification ?? '',
      grade: typed.grade ?? '',
      size_mm: sizeTyped(typed.nominal_size_mm ?? ''),
    },
    own,
  );
  return (
    <section className="claim-limits" aria-label={words.limits} aria-live="polite">
      <h3>{words.limits}</h3>
      {found === null ? <p className="soft">{words.limitsEmpty}</p> : null}
      {found !== null && 'fault' in found ? (
        <>
          <p>{words.noRule}</p>
          <p className="soft">{found.fault}</p>
        </>
      ) : null}
      {found !== null && 'specification' in found ? <LimitList specification={found.specification} /> : null}
    </section>
  );
}

function LimitList({ specification }: { readonly specification: Specification }) {
  const groups = [...Map.groupBy(specification.limits, ({ quantity }) => quantity)];
  return (
    <>
      <p>
        <strong>{specification.title}</strong> <span className="soft">{text.brief.edition(specification.edition)}</span>
      </p>
      <dl className="claim-limit-list">
        {groups.map(([quantity, limits]) => (
          <div key={quantity}>
            <dt>{nameOf(quantity)}</dt>
            {limits.map((limit) => (
              <dd key={limit.statement}>
                <LimitOrigin limit={limit} />
              </dd>
            ))}
          </div>
        ))}
      </dl>
    </>
  );
}

function nameOf(quantity: Quantity): string {
  return quantityNames[quantity];
}
