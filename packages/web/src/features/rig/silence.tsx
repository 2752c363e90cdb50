import { text } from '../../lib/text.ts';
import type { LiveState } from './live-state.ts';

/** Shorter silences are no news. */
const saidFrom_s = 3;

const seconds = (time_s: number) => `${Math.round(time_s)}\u00a0s`;

interface SilenceProps {
  readonly state: LiveState;
  /** Seconds after which the recording is closed. */
  readonly limit_s: number | null;
}

/** Says that nothing comes, and what happens when it stays so. */
export function Silence({ state: { view, quiet_s, ended, keeping }, limit_s }: SilenceProps) {
  if (!view || view.ended !== null || limit_s === null || ended || keeping !== null || quiet_s < saidFrom_s)
    return null;
  return (
    <p className="rig-away" role="alert">
      {text.rig.silent(seconds(quiet_s), seconds(limit_s))}
    </p>
  );
}
