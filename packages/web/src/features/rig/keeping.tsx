import { text } from '../../lib/text.ts';

const words = text.rig.unfinished;

/** How far the keeping of a recording is. */
export function Keeping({ share }: { readonly share: number }) {
  const percent = Math.round(100 * share);
  return (
    <div className="keeping">
      <p role="status">
        <strong>{words.keeping(`${percent}\u00a0%`)}</strong>
        <span className="line soft">{words.keepingWords}</span>
      </p>
      <progress max={100} value={percent} aria-label={words.keeping('')} />
    </div>
  );
}
