import { type Flag, type ListedSize, rulebook, type Specification, sizesFor } from '@provinghouse/core';
import { Link, useSearchParams } from 'wouter';
import { Figure } from '../../components/figure.tsx';
import { Notice } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { useOwnStandards } from '../../lib/own-standards.ts';
import { hrefs } from '../../lib/route.ts';
import { keyText, type SpecificationKey } from '../../lib/specification-key.ts';
import { text } from '../../lib/text.ts';
import { LimitTable } from './limit-table.tsx';
import { type LookedUp, lookUp } from './look-up.ts';
import { emptySearch, searchAddress } from './search-address.ts';
import { SourceList } from './source-list.tsx';

const words = text.rulebook;

/** One specification for one size and grade: every limit with its source. */
export function SpecificationPage() {
  const own = useOwnStandards();
  const [query] = useSearchParams();
  const found = lookUp(query.get('of'), own);
  if (found.specification === null) {
    return (
      <Notice title={words.unknown}>
        <p>{found.fault}</p>
        <p>{words.unknownCure}</p>
        <p>
          <Link href={hrefs.rulebook()}>{words.toSearch}</Link>
        </p>
      </Notice>
    );
  }
  const { specification, entry, key } = found;
  return (
    <Page
      title={specification.title}
      mark={entry.isOwn ? words.own : null}
      lead={
        <p>
          {entry.title}. <span className="soft">{words.edition(entry.edition)}</span>
        </p>
      }
    >
      <Section label={words.limits} note={words.limitsHow}>
        <LimitTable specification={specification} />
      </Section>
      <Section label={words.sources} note={words.sourcesHow}>
        <SourceList specification={specification} />
      </Section>
      <Section label={words.about}>
        <About specification={specification} why={entry.why} />
      </Section>
      <Section label={words.next}>
        <Ways specification={specification} of={keyText(key)} />
      </Section>
      <Section label={words.sizes}>
        <Others found={found} />
      </Section>
    </Page>
  );
}

const doubtful: readonly Flag[] = ['memory', 'inference', 'suspect', 'conflict'];

function About({ specification, why }: { readonly specification: Specification; readonly why: string }) {
  const { limits, confidence, gradeStress_N_per_mm2: stress } = specification;
  const doubted = limits.filter(({ provenance }) => provenance.flags.some((flag) => doubtful.includes(flag)));
  return (
    <dl className="facts">
      <dt>{words.trust}</dt>
      <dd>
        {words.confidence[confidence] ?? rulebook.conventions.confidence[confidence] ?? confidence}. {why}
      </dd>
      <dt>{words.doubtful}</dt>
      <dd>{words.doubtfulCount(doubted.length, limits.length)}</dd>
      {stress === null ? null : (
        <>
          <dt>{words.stress}</dt>
          <dd>
            <Figure value={stress} unit="N/mm2" />
          </dd>
        </>
      )}
    </dl>
  );
}

function Ways({ specification, of }: { readonly specification: Specification; readonly of: string }) {
  const limit = specification.limits.some(({ quantity }) => quantity === 'breakingForce') ? '&limit=breakingForce' : '';
  return (
    <p className="rulebook-presses">
      <Link className="press" href={hrefs.rulebook(searchAddress.write({ ...emptySearch, compareWith: of }))}>
        {words.toCompare}
      </Link>
      <Link className="press" href={hrefs.ownSpecification(of)}>
        {words.toOwn}
      </Link>
      <Link className="press" href={hrefs.reckoner(`chain=${encodeURIComponent(of)}${limit}`)}>
        {words.toReckoner}
      </Link>
    </p>
  );
}

/** The same standard in its other sizes and grades. */
function Others({ found }: { readonly found: Extract<LookedUp, { fault: null }> }) {
  const own = useOwnStandards();
  const { entry, key } = found;
  const sizes = sizesFor({ standard: entry.id, grade: key.grade ?? undefined, own });
  const isSame = ({ size_mm, tradeSize }: ListedSize) =>
    key.tradeSize === null ? key.size_mm === size_mm && tradeSize === null : key.tradeSize === tradeSize;
  return (
    <>
      {entry.anySizeWithin_mm === null ? null : <p>{words.anySize(...entry.anySizeWithin_mm)}</p>}
      <ul className="rulebook-sizes" aria-label={words.sizesCaption}>
        {sizes.map((size) => (
          <li key={`${size.tradeSize ?? ''} ${size.size_mm}`}>
            <SizeLink size={size} of={key} isSame={isSame(size)} />
          </li>
        ))}
      </ul>
      {entry.grades.length < 2 ? null : (
        <ul className="rulebook-sizes" aria-label={words.grades}>
          {entry.grades.map((grade) => (
            <li key={grade}>
              <Link
                href={hrefs.specification(keyText({ ...key, grade }))}
                aria-current={grade === key.grade ? 'page' : undefined}
              >
                {words.grade} {grade}
              </Link>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

interface SizeLinkProps {
  readonly size: ListedSize;
  readonly of: SpecificationKey;
  readonly isSame: boolean;
}

function SizeLink({ size: { size_mm, tradeSize }, of, isSame }: SizeLinkProps) {
  const key = { ...of, size_mm: tradeSize === null ? size_mm : null, tradeSize };
  return (
    <Link href={hrefs.specification(keyText(key))} aria-current={isSame ? 'page' : undefined}>
      {tradeSize === null ? `${size_mm}\u00a0mm` : text.choice.trade(tradeSize, size_mm)}
    </Link>
  );
}
