import type { RigDesk } from '@provinghouse/contract';
import { useState } from 'react';
import { rigOrders } from '../../lib/requests/rig.ts';
import { text } from '../../lib/text.ts';
import type { LiveState } from './live-state.ts';
import { useAsked } from './use-asked.ts';
import { useKeys } from './use-keys.ts';

interface LiveKeysProps {
  readonly rig: string;
  readonly state: LiveState;
  readonly setDesk: (desk: RigDesk) => void;
}

const words = text.rig.keys;

/** Start, mark and stop, for a thumb in a glove and for a keyboard. Stop asks once. */
export function LiveKeys({ rig, state, setDesk }: LiveKeysProps) {
  const [saying, setSaying] = useState<string>(text.rig.markWords[0]);
  const [fault, setFault] = useState('');
  const isRunning = state.startedAt !== null;
  const order = async (reply: ReturnType<typeof rigOrders.start>) => {
    const { ok, ...rest } = await reply;
    if (ok && 'record' in rest) setDesk(rest.record);
    setFault('fault' in rest ? rest.fault.detail : '');
  };
  const start = () => {
    if (!isRunning) void order(rigOrders.start(rig));
  };
  const mark = () => {
    if (isRunning) void order(rigOrders.mark(rig, saying));
  };
  const stop = useAsked(() => void order(rigOrders.stop(rig)));
  useKeys({ ' ': start, m: mark, M: mark, Escape: stop.press });
  return (
    <section className="live-keys" aria-label={words.label}>
      <div className="keys-above">
        <fieldset className="mark-words">
          <legend className="for-ears">{words.words}</legend>
          {text.rig.markWords.map((one) => (
            <label key={one} className="mark-word">
              <input type="radio" name="mark" checked={saying === one} onChange={() => setSaying(one)} />
              <span>{one}</span>
            </label>
          ))}
        </fieldset>
        <p className="keys-asks" role="alert">
          {fault === '' ? (stop.isAsking ? (isRunning ? words.asks : words.asksArmed) : '') : fault}
        </p>
      </div>
      <div className="keys">
        <button type="button" className="rig-key rig-key-start" onClick={start} disabled={isRunning}>
          {words.start} <kbd>{words.startKey}</kbd>
        </button>
        <button type="button" className="rig-key" onClick={mark} disabled={!isRunning}>
          {words.mark} <kbd>{words.markKey}</kbd>
        </button>
        <button type="button" className="rig-key rig-key-stop" onClick={stop.press}>
          {stop.isAsking ? words.stopSure : words.stop} <kbd>{words.stopKey}</kbd>
        </button>
      </div>
    </section>
  );
}
