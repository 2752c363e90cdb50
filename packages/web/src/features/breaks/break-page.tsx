import type { RowHeld } from '@provinghouse/contract';
import type { OwnStandard } from '@provinghouse/core';
import { useState } from 'react';
import { Link } from 'wouter';
import { proportionOf } from '../../components/link-drawing-proportion.ts';
import { Notice } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { Photographs } from '../../components/photographs.tsx';
import { WhoHere } from '../../components/who-here.tsx';
import { productOf } from '../../lib/entry/product-of.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { nextToRead, type PulledPiece } from './pulled-pieces.ts';
import { ReadingForm } from './reading-form.tsx';
import { Readings } from './readings.tsx';

interface BreakPageProps {
  readonly code: string;
  readonly pull: string;
  readonly list: readonly PulledPiece[];
  readonly person: string | null;
  readonly rows: {
    readonly people: readonly RowHeld<'people'>[];
    readonly products: readonly RowHeld<'products'>[];
    readonly samples: readonly RowHeld<'samples'>[];
    readonly breaks: readonly RowHeld<'breaks'>[];
    readonly own: readonly OwnStandard[];
  };
}

/** The break of one pull: first one's own reading, then everybody's. */
export function BreakPage({ code, pull, list, person, rows }: BreakPageProps) {
  const [isAnother, setAnother] = useState(false);
  const words = text.breaks;
  const one = list.find((found) => found.pull.pull === pull);
  if (one === undefined)
    return (
      <Notice title={words.unknown(pull)}>
        <p>{words.unknownCure}</p>
        <p>
          <Link href={hrefs.breaks(code)}>{words.toList}</Link>
        </p>
      </Notice>
    );
  const { piece, mine, others } = one;
  const product = productOf(piece, rows);
  const form = (label: string) => (
    <Section label={label} note={words.readers(others.length)}>
      <ReadingForm
        code={code}
        pulled={one}
        examiner={person ?? ''}
        proportion={proportionOf(product, rows.own)}
        product={product}
        people={rows.people.map(({ body }) => body)}
        onKept={() => setAnother(false)}
        {...(isAnother ? { onCancel: () => setAnother(false) } : {})}
      />
    </Section>
  );
  return (
    <Page
      title={words.titleOf(piece.piece)}
      mark={<span className="soft">{code}</span>}
      lead={<p>{words.of(pull, piece.links, product === null ? text.notRecorded : `${product.nominal_size_mm} mm`)}</p>}
      aside={<Ways code={code} piece={piece.piece} />}
    >
      {person === null ? (
        <Section label={words.own}>
          <div className="said-so">
            <p>{words.whoFirst}</p>
            <div>
              <WhoHere />
            </div>
          </div>
        </Section>
      ) : mine.length === 0 ? (
        form(words.own)
      ) : (
        <>
          <Section label={words.readings} note={words.readingsHow}>
            <Readings
              code={code}
              piece={piece.piece}
              readings={rows.breaks.filter(({ body }) => body.pull === pull)}
              next={nextToRead(list, pull)}
              onAnother={() => setAnother(true)}
              isAnother={isAnother}
            />
          </Section>
          {isAnother ? form(words.another) : null}
        </>
      )}
      <Section label={text.photograph.label}>
        <Photographs book={code} of={{ piece: piece.piece }} caption={null} />
      </Section>
    </Page>
  );
}

function Ways({ code, piece }: { readonly code: string; readonly piece: string }) {
  return (
    <nav className="ways" aria-label={text.breaks.toList}>
      <Link className="press" href={hrefs.breaks(code)}>
        {text.breaks.toList}
      </Link>
      <Link className="press" href={hrefs.piece(code, piece)}>
        {text.breaks.toPiece}
      </Link>
    </nav>
  );
}
