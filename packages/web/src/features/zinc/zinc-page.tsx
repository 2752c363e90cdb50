import { Link } from 'wouter';
import { proportionOf } from '../../components/link-drawing-proportion.ts';
import { Notice } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { Photographs } from '../../components/photographs.tsx';
import { productOf } from '../../lib/entry/product-of.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { Adherence } from './adherence.tsx';
import { Thickness } from './thickness.tsx';
import type { ZincRows } from './zinc-rows.ts';

interface ZincPageProps {
  readonly code: string;
  readonly piece: string;
  readonly rows: ZincRows;
}

/** The zinc of one piece: thickness before the pull, adherence after it. */
export function ZincPage({ code, piece, rows }: ZincPageProps) {
  const words = text.zinc;
  const at = rows.pieces.findIndex(({ body }) => body.piece === piece);
  const found = rows.pieces[at]?.body;
  if (found === undefined)
    return (
      <Notice title={words.unknown(piece)}>
        <p>{words.unknownCure}</p>
        <p>
          <Link href={hrefs.zinc(code)}>{words.toList}</Link>
        </p>
      </Notice>
    );
  const product = productOf(found, rows);
  const proportion = proportionOf(product, rows.own);
  const isPulled = rows.pulls.some(({ body }) => body.piece === piece);
  const next = rows.pieces[at + 1]?.body.piece ?? null;
  const size = product === null ? text.notRecorded : `${product.nominal_size_mm} mm`;
  const before = (
    <Thickness
      key="before"
      code={code}
      piece={found}
      rows={rows}
      proportion={proportion}
      isPulled={isPulled}
      next={next}
    />
  );
  const after = (
    <Section key="after" label={words.adherence.label} note={words.adherence.how}>
      {isPulled ? (
        <Adherence code={code} piece={found} rows={rows} proportion={proportion} />
      ) : (
        <p className="soft">{words.adherence.notYet}</p>
      )}
    </Section>
  );
  return (
    <Page
      title={words.titleOf(piece)}
      mark={<span className="soft">{code}</span>}
      lead={<p>{words.of(found.links, size)}</p>}
      aside={<Ways code={code} previous={rows.pieces[at - 1]?.body.piece ?? null} next={next} />}
    >
      {isPulled ? [after, before] : [before, after]}
      <Section label={text.photograph.label}>
        <Photographs book={code} of={{ piece }} caption={null} />
      </Section>
    </Page>
  );
}

interface WaysProps {
  readonly code: string;
  readonly previous: string | null;
  readonly next: string | null;
}

function Ways({ code, previous, next }: WaysProps) {
  const words = text.zinc;
  return (
    <nav className="ways" aria-label={words.label}>
      <Link className="press" href={hrefs.zinc(code)}>
        {words.toList}
      </Link>
      {previous === null ? null : (
        <Link className="press" href={hrefs.zincOf(code, previous)} aria-label={words.previous(previous)}>
          ← {previous}
        </Link>
      )}
      {next === null ? null : (
        <Link className="press" href={hrefs.zincOf(code, next)} aria-label={words.next(next)}>
          {next} →
        </Link>
      )}
    </nav>
  );
}
