import type { GaugingInput, GaugingPlace } from '@provinghouse/core';
import type { ReactNode } from 'react';
import { proportionFrom, usualProportion } from '../../components/link-drawing-proportion.ts';
import { limitText } from '../../lib/limit-text.ts';
import { text } from '../../lib/text.ts';
import type { PieceAtDesk } from './gauging-desk.ts';
import { isSamePlace } from './gauging-progress.ts';
import { PlaceDrawing } from './place-drawing.tsx';
import { holdWords, quantityWords, readingText } from './place-words.ts';

const words = text.gaugingDesk;

interface PlaceMatterProps {
  readonly at: PieceAtDesk;
  readonly place: GaugingPlace;
  readonly isAgain: boolean;
  readonly readings: readonly (GaugingInput & { readonly repeat: number })[];
  /** The field. */
  readonly children: ReactNode;
}

/** The place at hand in large words, its drawing, its limit and what was read of it so far. */
export function PlaceMatter({ at, place, isAgain, readings, children }: PlaceMatterProps) {
  const { limits, product } = at;
  const limit = limits.find(
    (one) => one.quantity === place.quantity && (one.links === null || one.links === place.overLinks),
  );
  const here = readings.filter((one) => isSamePlace(one, place));
  const alike = readings.filter((one) => one.quantity === place.quantity && one.overLinks === place.overLinks);
  const proportion = product === null ? usualProportion : proportionFrom(limits, product.nominal_size_mm);
  return (
    <div className="gauging-matter">
      <div className="gauging-words">
        <p className="gauging-place" aria-live="polite">
          <span className="gauging-link">{words.place.link(place.link)}</span> <span>{quantityWords(place)}</span>
        </p>
        <p className="soft">
          {holdWords(place)} {isAgain || place.repeat > 1 ? <strong>{words.now.again(place.repeat)}</strong> : null}
        </p>
        {children}
      </div>
      <div className="gauging-beside">
        <PlaceDrawing place={place} proportion={proportion} />
        <dl className="facts">
          <dt>{words.now.limits}</dt>
          <dd>{limit === undefined ? words.now.noLimit : limitText(limit)}</dd>
          <dt>{words.now.soFar}</dt>
          <dd>
            {here.length === 0
              ? words.now.nothingSoFar
              : `${here.map(({ value_mm }) => readingText(value_mm)).join(' · ')} mm`}
          </dd>
          {alike.length === 0 ? null : (
            <>
              <dt>{words.now.others}</dt>
              <dd>{spreadOf(alike.map(({ value_mm }) => value_mm))}</dd>
            </>
          )}
        </dl>
      </div>
    </div>
  );
}

function spreadOf(values: readonly number[]): string {
  return words.now.spread(values.length, readingText(Math.min(...values)), readingText(Math.max(...values)));
}
