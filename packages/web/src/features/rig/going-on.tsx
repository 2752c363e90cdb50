import type { Caution, RigDesk, UnfinishedPull } from '@provinghouse/contract';
import { type FormEvent, useEffect, useRef, useState } from 'react';
import { rigOrders } from '../../lib/requests/rig.ts';
import { text } from '../../lib/text.ts';
import { CautionList } from './caution-list.tsx';
import { Confirmation } from './piece-choice.tsx';

const words = text.rig.unfinished;

interface GoingOnProps {
  readonly rig: string;
  readonly pull: UnfinishedPull;
  readonly setDesk: (desk: RigDesk) => void;
  readonly onBack: () => void;
}

/** The checklist before a recording is gone on with: somebody may stand near a loaded rig. */
export function GoingOn({ rig, pull, setDesk, onBack }: GoingOnProps) {
  const [confirmed, setConfirmed] = useState('');
  const [said, setSaid] = useState<readonly Caution[]>([]);
  const [fault, setFault] = useState('');
  const [isStarting, setStarting] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const goOn = async (event: FormEvent) => {
    event.preventDefault();
    setStarting(true);
    const reply = await rigOrders.goOn(rig, { spool: pull.spool, confirmed, cautions: said });
    setStarting(false);
    setFault(reply.ok ? '' : reply.fault.detail);
    if (reply.ok) setDesk(reply.record);
  };
  return (
    <form className="going-on" onSubmit={(event) => void goOn(event)} aria-label={words.before}>
      <h4 ref={heading} tabIndex={-1}>
        {words.before}
      </h4>
      <p>{words.beforeWords}</p>
      <Confirmation chosen={pull} confirmed={confirmed} onConfirmed={setConfirmed} />
      <fieldset className="cautions">
        <legend>{text.rig.arming.cautions}</legend>
        <CautionList said={said} onSaid={setSaid} />
      </fieldset>
      <p className="arming-fault" role="alert">
        {fault}
      </p>
      <div className="keys going-on-keys">
        <button type="submit" className="rig-key rig-key-arm" disabled={isStarting}>
          {isStarting ? words.starting : words.start}
        </button>
        <button type="button" className="rig-key" onClick={onBack}>
          {words.back}
        </button>
      </div>
    </form>
  );
}
