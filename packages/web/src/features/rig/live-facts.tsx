import { setFigure } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import type { LiveState } from './live-state.ts';
import { forceText } from './piece-choice.tsx';

const words = text.rig;
const percent = (share: number) => `${Math.round(100 * share)}\u00a0%`;

/** Rate and forecast, each legible from the far side of the bench, and the next rule line. */
export function LiveFacts({ state: { view } }: { readonly state: LiveState }) {
  const forecast = view?.forecast ?? null;
  return (
    <dl className="live-facts">
      <div>
        <dt>{words.rate}</dt>
        <dd className="live-fact">
          <Numeral value={view?.rateOfRise_kN_per_s ?? null} unit="kN/s" none={text.none} />
        </dd>
        <dd className="soft">
          {view?.rateOverElastic == null ? '\u00a0' : words.rateOverElastic(percent(view.rateOverElastic))}
        </dd>
      </div>
      <div>
        <dt>
          {words.forecast}
          {forecast?.timeToMaximum_s == null
            ? ''
            : `, ${words.forecastTime(`${Math.round(forecast.timeToMaximum_s)}\u00a0s`)}`}
        </dt>
        <dd className="live-fact">
          <Numeral value={forecast?.maximum_kN ?? null} unit="kN" none={view?.ended ? text.none : words.noForecast} />
        </dd>
        <dd className="soft">
          {forecast ? words.forecastWords(forceText(forecast.lower90_kN), forceText(forecast.upper90_kN)) : '\u00a0'}
        </dd>
      </div>
      <div className="live-next">
        <dt>{words.next}</dt>
        <dd>
          {view?.next
            ? words.nextWords(view.next.name, forceText(view.next.distance_kN))
            : view && view.passed.length > 0
              ? words.noNext
              : text.none}
          {view?.next && view.passed.length > 0 ? (
            <span className="soft">; {words.passed(view.passed.at(-1)?.name ?? '')}</span>
          ) : null}
        </dd>
      </div>
    </dl>
  );
}

interface NumeralProps {
  readonly value: number | null;
  readonly unit: string;
  /** In its place while there is none. */
  readonly none: string;
}

function Numeral({ value, unit, none }: NumeralProps) {
  if (value === null) return <span className="maximum-none">{none}</span>;
  const figure = setFigure({ value, unit });
  return (
    <>
      {figure.value}
      <span className="unit">{figure.unit}</span>
    </>
  );
}
