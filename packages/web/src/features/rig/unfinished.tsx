import type { RigDesk, UnfinishedPull } from '@provinghouse/contract';
import { useState } from 'react';
import { rigOrders } from '../../lib/requests/rig.ts';
import { text } from '../../lib/text.ts';
import { forceText } from './piece-choice.tsx';

const words = text.rig.unfinished;

interface UnfinishedProps {
  readonly desk: RigDesk;
  readonly setDesk: (desk: RigDesk) => void;
}

/** Recordings that were broken off, each offered for sealing with its gap marked. */
export function Unfinished({ desk, setDesk }: UnfinishedProps) {
  if (desk.unfinished.length === 0) return null;
  return (
    <section className="unfinished" aria-label={words.label}>
      <h2>{words.label}</h2>
      {desk.unfinished.map((pull) => (
        <Offer key={pull.spool} rig={desk.rig} pull={pull} setDesk={setDesk} />
      ))}
    </section>
  );
}

interface OfferProps {
  readonly rig: string;
  readonly pull: UnfinishedPull;
  readonly setDesk: (desk: RigDesk) => void;
}

function Offer({ rig, pull, setDesk }: OfferProps) {
  const [fault, setFault] = useState('');
  const recover = async () => {
    const reply = await rigOrders.recover(rig, pull.spool);
    if (reply.ok) setDesk(reply.record);
    else setFault(reply.fault.detail);
  };
  const at = `${pull.startedAt.slice(0, 10)} ${pull.startedAt.slice(11, 16)} UTC`;
  return (
    <div className="unfinished-pull">
      <p>
        {words.words(pull.piece, at)}{' '}
        {words.found(pull.samples, pull.maximum_kN === null ? text.none : forceText(pull.maximum_kN))}
      </p>
      <p className="soft">{words.pressWords}</p>
      <button type="button" className="press" onClick={() => void recover()}>
        {words.press}
      </button>
      <p role="alert">{fault}</p>
    </div>
  );
}
