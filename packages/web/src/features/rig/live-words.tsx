import { text } from '../../lib/text.ts';
import type { LiveState } from './live-state.ts';

const lastFew = 3;
const seconds = (time_s: number) => `${time_s.toFixed(1)}\u00a0s`;

/** What was marked, what went wrong, how much is kept. The newest few of each. */
export function LiveWords({ state }: { readonly state: LiveState }) {
  const said = [...state.troubles.map(({ words }) => words), ...(state.view?.doubts ?? [])];
  // What was not recorded stands first, whatever else is said.
  const gaps = state.gaps.slice(-1).map(({ words }) => words);
  const troubles = [...gaps, ...[...new Set(said)].slice(gaps.length - lastFew)];
  return (
    <div className="live-words">
      {state.marks.length === 0 ? null : (
        <section aria-label={text.rig.marks}>
          <h2>{text.rig.marks}</h2>
          <ul>
            {state.marks.slice(-lastFew).map((mark) => (
              <li key={`${mark.time_s} ${mark.words}`}>{text.rig.markAt(seconds(mark.time_s), mark.words)}</li>
            ))}
          </ul>
        </section>
      )}
      {troubles.length === 0 ? null : (
        <section aria-label={text.rig.troubles} role="status">
          <h2 className="trouble-head">{text.rig.troubles}</h2>
          <ul>
            {troubles.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
      <p className="soft small">{text.rig.counts(state.received, state.rejected)}</p>
    </div>
  );
}
