import type { CampaignFinding } from '@provinghouse/contract';
import { lazy, Suspense, useState } from 'react';
import { text } from '../../lib/text.ts';
import { plannedList } from './planned-list.ts';
import type { Desk } from './use-desk.ts';

const OverlayFigure = lazy(() => import('./overlay-figure.tsx'));

interface OverlayProps {
  readonly desk: Desk;
  readonly finding: CampaignFinding | null;
}

/** A recording that can be laid over others. */
export interface Recording {
  readonly pull: string;
  readonly piece: string;
  readonly product: string;
}

/** Any number of recordings, chosen by piece or by product, drawn over each other. */
export function Overlay({ desk, finding }: OverlayProps) {
  const words = text.pulls.overlay;
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const recordings = plannedList(desk)
    .flatMap(({ piece, product, pulls }) =>
      pulls.flatMap(({ body }) => (body.trace === null ? [] : [{ pull: body.pull, piece, product }])),
    )
    .sort((a, b) => a.product.localeCompare(b.product) || a.piece.localeCompare(b.piece, undefined, { numeric: true }));
  const shown = recordings.filter(({ pull }) => chosen.has(pull));
  const choose = (pulls: readonly string[], isOn: boolean) =>
    setChosen((now) => {
      const next = new Set(now);
      for (const pull of pulls)
        if (isOn) next.add(pull);
        else next.delete(pull);
      return next;
    });
  if (recordings.length === 0) return <p className="soft">{words.none}</p>;
  return (
    <>
      <Choices recordings={recordings} chosen={chosen} onChoose={choose} />
      {shown.length === 0 ? (
        <p className="soft">{words.empty}</p>
      ) : (
        <>
          <p>
            <button type="button" className="press" onClick={() => setChosen(new Set())}>
              {words.clear}
            </button>
          </p>
          <Suspense fallback={<p className="soft">{words.drawing}</p>}>
            <OverlayFigure code={desk.code} recordings={shown} finding={finding} />
          </Suspense>
        </>
      )}
    </>
  );
}

interface ChoicesProps {
  readonly recordings: readonly Recording[];
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (pulls: readonly string[], isOn: boolean) => void;
}

function Choices({ recordings, chosen, onChoose }: ChoicesProps) {
  const words = text.pulls.overlay;
  const counts = Map.groupBy(recordings, ({ piece }) => piece);
  const named = ({ piece, pull }: Recording) => ((counts.get(piece)?.length ?? 0) > 1 ? `${piece}, ${pull}` : piece);
  return (
    <div className="pulls-choices">
      {[...Map.groupBy(recordings, ({ product }) => product)].map(([product, own]) => {
        const pulls = own.map(({ pull }) => pull);
        return (
          <fieldset key={product}>
            <legend>{product}</legend>
            <Tick
              words={words.all(product)}
              isOn={pulls.every((pull) => chosen.has(pull))}
              onChange={(isOn) => onChoose(pulls, isOn)}
            />
            {own.map((recording) => (
              <Tick
                key={recording.pull}
                words={named(recording)}
                isOn={chosen.has(recording.pull)}
                onChange={(isOn) => onChoose([recording.pull], isOn)}
              />
            ))}
          </fieldset>
        );
      })}
    </div>
  );
}

interface TickProps {
  readonly words: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}

function Tick({ words, isOn, onChange }: TickProps) {
  return (
    <label className="pulls-tick">
      <input type="checkbox" checked={isOn} onChange={(event) => onChange(event.currentTarget.checked)} /> {words}
    </label>
  );
}
