import { useState } from 'react';
import { Correction, Withdrawal } from '../../components/correction.tsx';
import { Section } from '../../components/page.tsx';
import { Photographs } from '../../components/photographs.tsx';
import { text } from '../../lib/text.ts';
import { AgainstClaim } from './against-claim.tsx';
import { Cutting } from './cutting.tsx';
import { MoveTable } from './move-table.tsx';
import { PieceTable } from './piece-table.tsx';
import { sampleColumns } from './sample-columns.tsx';
import type { Bench, SampleSeen } from './use-bench.ts';

const words = text.samples;

interface SampleSectionsProps {
  readonly bench: Bench;
  readonly seen: SampleSeen;
}

/** One sample: as received, its photographs, its pieces, and where it went. */
export function SampleSections({ bench, seen }: SampleSectionsProps) {
  const { campaign, isBlind } = bench;
  const { held } = seen;
  const isBlindPlan = campaign.blinding === 'blind' && campaign.unblinded_at === null;
  return (
    <>
      <Section label={words.one.label(held.id)} note={words.one.received}>
        <Received bench={bench} seen={seen} />
      </Section>
      <Section label={text.photograph.label} {...(isBlind ? { note: words.one.photographsBlind } : {})}>
        <Photographs
          book={campaign.campaign}
          of={{ sample: held.id }}
          caption={isBlind ? null : words.one.photographCaption}
          stem={isBlindPlan ? 'sample' : undefined}
        />
      </Section>
      <Section label={words.cut.label} note={words.cut.how}>
        <PieceTable bench={bench} pieces={seen.pieces} />
        <Cutting bench={bench} seen={seen} />
      </Section>
      <Section label={words.moves.label} note={words.moves.how}>
        <MoveTable bench={bench} seen={seen} />
      </Section>
    </>
  );
}

function Received({ bench, seen }: SampleSectionsProps) {
  const [open, setOpen] = useState<'correct' | 'withdraw' | null>(null);
  const { held, product, expected } = seen;
  const { body } = held;
  const { isBlind } = bench;
  const unsaid = isBlind ? <span className="soft">{words.one.notShown}</span> : null;
  const book = bench.campaign.campaign;
  const facts = [
    [words.label.product, product === null || isBlind ? body.product : `${product.supplier}: ${product.product}`],
    [words.label.received_on, body.received_on],
    [words.label.received_by, body.received_by],
    [words.label.bought_from, body.bought_from ?? unsaid],
    [words.label.batch_mark, body.batch_mark ?? unsaid],
    [words.label.condition, body.condition ?? unsaid],
    [words.label.length_m, body.length_m === null ? null : `${body.length_m}\u00a0m`],
    [words.label.mass_kg, body.mass_kg === null ? null : `${body.mass_kg}\u00a0kg`],
  ] as const;
  return (
    <>
      <div className="form-pair">
        <dl className="facts">
          {facts.map(([name, value]) => (
            <div key={name} className="fact">
              <dt>{name}</dt>
              <dd>{value ?? <span className="soft">{text.notRecorded}</span>}</dd>
            </div>
          ))}
        </dl>
        <AgainstClaim
          product={product}
          expected={expected}
          length_m={body.length_m}
          mass_kg={body.mass_kg}
          isBlind={isBlind}
        />
      </div>
      {isBlind ? (
        <p className="form-keys soft">{words.one.blind}</p>
      ) : (
        <p className="form-keys">
          <button type="button" className="press" onClick={() => setOpen('correct')}>
            {words.one.correct}
          </button>
          <button type="button" className="press" onClick={() => setOpen('withdraw')}>
            {words.one.withdraw}
          </button>
        </p>
      )}
      {open === 'correct' ? (
        <Correction
          book={book}
          kind="samples"
          held={held}
          what={words.one.what(held.id)}
          asked={sampleColumns(bench, false)}
          onDone={() => setOpen(null)}
        />
      ) : null}
      {open === 'withdraw' ? (
        <Withdrawal
          book={book}
          kind="samples"
          held={held}
          what={words.one.what(held.id)}
          onDone={() => setOpen(null)}
        />
      ) : null}
    </>
  );
}
