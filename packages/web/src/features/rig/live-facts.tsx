import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import type { LiveState } from './live-state.ts';
import { forceText } from './piece-choice.tsx';

const words = text.rig;
const percent = (share: number) => `${Math.round(100 * share)}\u00a0%`;

/** Rate, next rule line and forecast. */
export function LiveFacts({ state: { view } }: { readonly state: LiveState }) {
  const forecast = view?.forecast ?? null;
  return (
    <dl className="live-facts">
      <dt>{words.rate}</dt>
      <dd>
        {view?.rateOfRise_kN_per_s == null ? text.none : figureText({ value: view.rateOfRise_kN_per_s, unit: 'kN/s' })}
        <span className="line soft">
          {view?.rateOverElastic == null ? '\u00a0' : words.rateOverElastic(percent(view.rateOverElastic))}
        </span>
      </dd>
      <dt>{words.next}</dt>
      <dd>
        {view?.next
          ? words.nextWords(view.next.name, forceText(view.next.distance_kN))
          : view && view.passed.length > 0
            ? words.noNext
            : text.none}
        <span className="line soft">
          {view?.passed.length ? words.passed(view.passed.at(-1)?.name ?? '') : '\u00a0'}
        </span>
      </dd>
      <dt>{words.forecast}</dt>
      <dd>
        {forecast ? forceText(forecast.maximum_kN) : view?.ended ? text.none : words.noForecast}
        {forecast?.timeToMaximum_s == null
          ? ''
          : `, ${words.forecastTime(`${Math.round(forecast.timeToMaximum_s)}\u00a0s`)}`}
        <span className="line soft">
          {forecast ? words.forecastWords(forceText(forecast.lower90_kN), forceText(forecast.upper90_kN)) : '\u00a0'}
        </span>
      </dd>
    </dl>
  );
}
