import type { Row, RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { useRows } from '../../lib/entry/use-rows.ts';
import { text } from '../../lib/text.ts';
import { StepSheet } from './step-sheet.tsx';

const words = text.brief.desk.freeze;

interface FreezePartProps {
  readonly code: string;
  readonly campaign: Row<'campaign'>;
  readonly products: readonly RowHeld<'products'>[];
}

/** Whether the plan is frozen; if not, what it lacks, and the key to freeze it; in a blind campaign the unblinding. */
export function FreezePart({ code, campaign, products }: FreezePartProps) {
  if (campaign.plan_frozen_at !== null) return <Frozen code={code} campaign={campaign} at={campaign.plan_frozen_at} />;
  const lacks = [
    ...(products.length === 0 ? [words.lack.product] : []),
    ...(campaign.pieces_per_product === null ? [words.lack.pieces] : []),
    ...(campaign.order_seed === null ? [words.lack.seed] : []),
  ];
  return (
    <>
      <p className="lead-in">{words.open}</p>
      {lacks.length === 0 ? (
        <Ready code={code} campaign={campaign} products={products} />
      ) : (
        <div className="freeze-lacks">
          <p>{words.lacks}</p>
          <ul>
            {lacks.map((lack) => (
              <li key={lack}>{lack}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

function Ready({ code, campaign, products }: FreezePartProps) {
  const [isOpen, setOpen] = useState(false);
  const mind = useMind(code, campaign, products);
  const isBlind = campaign.blinding === 'blind';
  return (
    <>
      {mind === null ? null : (
        <p className={isBlind ? 'freeze-mind' : 'soft'}>
          {isBlind ? <strong>{words.minding}: </strong> : null}
          {mind}
        </p>
      )}
      <p className="form-keys">
        <button type="button" className="press press-main" onClick={() => setOpen(true)}>
          {words.key}
        </button>
      </p>
      {isOpen ? (
        <StepSheet
          code={code}
          step="plan/freeze"
          title={words.title}
          doing={words.doing}
          why={words.why}
          whyHint={words.whyHint}
          whyFault={words.whyFault}
          consent={{ words: words.consent, fault: words.consentFault }}
          onDone={() => setOpen(false)}
        >
          <ul className="sentences step-means">
            {words.means.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
            {isBlind ? (
              <li>
                <strong>{words.meansBlind}</strong>
              </li>
            ) : null}
          </ul>
          {isBlind && mind !== null ? <p className="freeze-mind">{mind}</p> : null}
        </StepSheet>
      ) : null}
    </>
  );
}

/** What to do before the freeze, because it is harder afterwards; null where nothing is left. */
function useMind(code: string, campaign: Row<'campaign'>, products: readonly RowHeld<'products'>[]): string | null {
  const samples = useRows(code, 'samples');
  const pieces = useRows(code, 'pieces');
  if (samples.state !== 'read' || pieces.state !== 'read') return null;
  const cut = new Set(pieces.rows.map(({ body }) => body.sample));
  const ready = new Set(samples.rows.filter(({ id }) => cut.has(id)).map(({ body }) => body.product));
  if (campaign.blinding === 'blind') return products.every(({ id }) => ready.has(id)) ? null : words.mind.blindPieces;
  return pieces.rows.length === 0 ? words.mind.openPieces : null;
}

function Frozen({
  code,
  campaign,
  at,
}: {
  readonly code: string;
  readonly campaign: Row<'campaign'>;
  readonly at: string;
}) {
  const [isOpen, setOpen] = useState(false);
  const { unblind } = text.brief.desk;
  const isBlind = campaign.blinding === 'blind' && campaign.unblinded_at === null;
  return (
    <>
      <p className="lead-in">
        <FrozenMark /> {words.frozen(timeText(at))}
      </p>
      {campaign.unblinded_at === null ? null : (
        <p className="lead-in">{unblind.done(timeText(campaign.unblinded_at))}</p>
      )}
      {isBlind ? (
        <>
          <p className="lead-in">{unblind.now}</p>
          <p className="form-keys">
            <button type="button" className="press" onClick={() => setOpen(true)}>
              {unblind.key}
            </button>
          </p>
        </>
      ) : null}
      {isOpen ? (
        <StepSheet
          code={code}
          step="unblind"
          title={unblind.title}
          doing={unblind.doing}
          why={unblind.why}
          whyHint={unblind.whyHint}
          whyFault={unblind.whyFault}
          onDone={() => setOpen(false)}
        >
          <p>{unblind.means}</p>
        </StepSheet>
      ) : null}
    </>
  );
}

/** A closed lock: shape and word, never a colour alone. */
export function FrozenMark() {
  return (
    <svg className="frozen-mark" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M3.5 5.5V3.8a2.5 2.5 0 0 1 5 0v1.7" fill="none" stroke="currentColor" strokeWidth="1.4" />
      <rect x="2" y="5.5" width="8" height="5.5" fill="currentColor" />
    </svg>
  );
}

/** To the minute, in UTC, as the ledger has it. */
export function timeText(at: string): string {
  return `${at.slice(0, 16).replace('T', ' ')} UTC`;
}
