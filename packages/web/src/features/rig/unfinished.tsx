import type { RigDesk, UnfinishedPull } from '@provinghouse/contract';
import { useState } from 'react';
import { rigOrders } from '../../lib/requests/rig.ts';
import { text } from '../../lib/text.ts';
import { GoingOn } from './going-on.tsx';
import { Keeping } from './keeping.tsx';
import { forceText } from './piece-choice.tsx';

const words = text.rig.unfinished;

interface UnfinishedProps {
  readonly desk: RigDesk;
  /** How far one of them is kept, 0 to 1; null when none is. */
  readonly keeping: number | null;
  /** The one that somebody is about to go on with; null when there is none. */
  readonly goingOn: string | null;
  readonly onGoingOn: (spool: string | null) => void;
  readonly setDesk: (desk: RigDesk) => void;
}

/** Recordings that wait, each to be gone on with or to be kept as it is. */
export function Unfinished({ desk, keeping, goingOn, onGoingOn, setDesk }: UnfinishedProps) {
  if (desk.unfinished.length === 0) return null;
  return (
    <section className="unfinished" aria-label={words.label}>
      <h2>{words.label}</h2>
      {keeping === null ? null : <Keeping share={keeping} />}
      {desk.unfinished.map((pull) => (
        <article key={pull.spool} className="unfinished-pull">
          <h3>{words.title(pull.piece, pull.pull)}</h3>
          <Found pull={pull} />
          <Offer
            rig={desk.rig}
            pull={pull}
            isKeeping={keeping !== null}
            isGoingOn={goingOn === pull.spool}
            onGoingOn={(isGoingOn) => onGoingOn(isGoingOn ? pull.spool : null)}
            setDesk={setDesk}
          />
        </article>
      ))}
    </section>
  );
}

/** How it came to wait and what it holds. */
function Found({ pull }: { readonly pull: UnfinishedPull }) {
  const at = `${pull.startedAt.slice(0, 10)} ${pull.startedAt.slice(11, 16)} UTC`;
  return (
    <p>
      {words.how[pull.how](at)}{' '}
      {pull.last_s === null
        ? words.empty
        : words.found(grouped(pull.samples), `${pull.last_s.toFixed(1)}\u00a0s`, forceText(pull.maximum_kN ?? 0))}{' '}
      {pull.hasParted ? words.parted : ''}
    </p>
  );
}

function grouped(count: number): string {
  return String(count).replaceAll(/\B(?=(\d{3})+$)/g, '\u202f');
}

interface OfferProps {
  readonly rig: string;
  readonly pull: UnfinishedPull;
  /** One of the recordings is being kept now. */
  readonly isKeeping: boolean;
  readonly isGoingOn: boolean;
  readonly onGoingOn: (isGoingOn: boolean) => void;
  readonly setDesk: (desk: RigDesk) => void;
}

/** The two ways on from a recording that waits. */
export function Offer({ rig, pull, isKeeping, isGoingOn, onGoingOn, setDesk }: OfferProps) {
  const [fault, setFault] = useState('');
  const [isSent, setSent] = useState(false);
  if (isGoingOn) return <GoingOn rig={rig} pull={pull} setDesk={setDesk} onBack={() => onGoingOn(false)} />;
  const keep = async () => {
    setSent(true);
    const reply = await rigOrders.recover(rig, pull.spool);
    setSent(false);
    setFault(reply.ok ? '' : reply.fault.detail);
    if (reply.ok) setDesk(reply.record);
  };
  const isBusy = isKeeping || isSent;
  const isEmpty = pull.samples === 0;
  return (
    <>
      <div className="ways">
        {pull.canGoOn ? (
          <div>
            <button type="button" className="rig-key rig-key-arm" disabled={isBusy} onClick={() => onGoingOn(true)}>
              {words.goOn}
            </button>
            <p className="soft">{words.goOnWords}</p>
          </div>
        ) : null}
        <div>
          <button type="button" className="rig-key" disabled={isBusy} onClick={() => void keep()}>
            {isEmpty ? words.putAside : words.keep}
          </button>
          <p className="soft">{isEmpty ? words.putAsideWords : words.keepWords}</p>
        </div>
      </div>
      <p className="arming-fault" role="alert">
        {fault}
      </p>
    </>
  );
}
