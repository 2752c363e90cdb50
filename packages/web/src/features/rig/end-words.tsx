import type { PullAtRig } from '@provinghouse/contract';
import { Link } from 'wouter';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import type { LiveState } from './live-state.ts';

interface EndWordsProps {
  readonly state: LiveState;
  readonly facts: PullAtRig | null;
  readonly onNext: () => void;
}

/** How the pull ended and whether it is in the record. */
export function EndWords({ state: { ended, armed }, facts, onNext }: EndWordsProps) {
  if (!ended || !armed) return null;
  return (
    <div className="end" role="status">
      <p className="end-words">
        <strong>{text.rig.end[ended.view.ended ?? 'operator']}</strong>{' '}
        {ended.sha256 === null
          ? `${text.rig.notKept} ${facts?.fault ?? ''}`
          : text.rig.kept(ended.samples, ended.sha256.slice(0, 12))}
      </p>
      <div className="keys">
        {facts && ended.sha256 !== null ? (
          <Link className="rig-key" href={hrefs.piece(facts.campaign, facts.piece)}>
            {text.rig.toPiece(facts.piece)}
          </Link>
        ) : null}
        <button type="button" className="rig-key rig-key-arm" onClick={onNext}>
          {text.rig.again}
        </button>
      </div>
    </div>
  );
}
