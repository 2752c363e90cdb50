import type { PullAtRig, RigDesk } from '@provinghouse/contract';
import { useState } from 'react';
import { Link } from 'wouter';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { Keeping } from './keeping.tsx';
import type { LiveState } from './live-state.ts';
import { Offer } from './unfinished.tsx';

interface EndWordsProps {
  readonly desk: RigDesk;
  readonly state: LiveState;
  readonly facts: PullAtRig | null;
  readonly setDesk: (desk: RigDesk) => void;
  readonly onNext: () => void;
}

/** How the pull ended and whether it is in the record; where it waits on disc, the two ways on from there. */
export function EndWords({ desk, state: { ended, armed, keeping }, facts, setDesk, onNext }: EndWordsProps) {
  const [isGoingOn, setGoingOn] = useState(false);
  if (!ended || !armed) return null;
  const waits =
    facts && desk.unfinished.find(({ campaign, pull }) => campaign === facts.campaign && pull === facts.pull);
  return (
    <div className={waits ? 'end end-waits' : 'end'}>
      <p className="end-words" role="status">
        <strong>{text.rig.end[ended.view.ended ?? 'operator']}</strong>{' '}
        {ended.sha256 === null
          ? `${waits ? '' : text.rig.notKept} ${facts?.fault ?? ''}`
          : text.rig.kept(ended.samples, ended.sha256.slice(0, 12))}
      </p>
      {keeping === null ? null : <Keeping share={keeping} />}
      {waits ? (
        <Offer
          rig={desk.rig}
          pull={waits}
          isKeeping={keeping !== null}
          isGoingOn={isGoingOn}
          onGoingOn={setGoingOn}
          setDesk={setDesk}
        />
      ) : null}
      <div className="keys">
        {facts && ended.sha256 !== null ? (
          <Link className="rig-key" href={hrefs.piece(facts.campaign, facts.piece)}>
            {text.rig.toPiece(facts.piece)}
          </Link>
        ) : null}
        <button type="button" className={waits ? 'rig-key' : 'rig-key rig-key-arm'} onClick={onNext}>
          {text.rig.again}
        </button>
      </div>
    </div>
  );
}
