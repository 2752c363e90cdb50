import type { WatchView } from '@provinghouse/core';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

interface SpeedGaugeProps {
  readonly view: WatchView | null;
  readonly window: readonly [number, number] | null;
}

const words = text.rig.speed;
const width = 400;
const shown = (mm_per_min: number) => figureText({ value: mm_per_min, unit: 'mm/min' });

/** Table speed on a scale with the window of the method; the words beside it say the same. */
export function SpeedGauge({ view, window }: SpeedGaugeProps) {
  const speed = view?.tableSpeed_mm_per_min ?? null;
  const end = Math.max(1, 1.5 * (window?.[1] ?? speed ?? 60));
  const place = (value: number) => (Math.min(Math.max(value, 0), end) / end) * width;
  const outside = view?.shareOutsideSpeed ?? null;
  return (
    <section className="gauge" aria-label={words.label}>
      <h2>{words.label}</h2>
      <p className="gauge-words">
        <span className="gauge-value">{speed === null ? words.none : shown(speed)}</span>
        {speed === null || window === null ? null : (
          <span className={speed < window[0] || speed > window[1] ? 'gauge-out' : 'soft'}>
            {speed < window[0] ? words.slow : speed > window[1] ? words.fast : words.inside}
          </span>
        )}
      </p>
      <svg viewBox={`0 0 ${width} 34`} className="gauge-scale" aria-hidden="true">
        {window ? (
          <rect
            className="gauge-window"
            x={place(window[0])}
            y="6"
            width={place(window[1]) - place(window[0])}
            height="16"
          />
        ) : null}
        <path className="gauge-line" d={`M0 22H${width}M0.5 14v8M${width - 0.5} 14v8`} />
        {speed === null ? null : (
          <path className="gauge-needle" d={`M${place(speed)} 24l-7 10h14zM${place(speed)} 4v20`} />
        )}
      </svg>
      <p className="soft small">
        {window ? words.window(`${window[0]}`, shown(window[1])) : text.rig.arming.speedFree}
        {outside === null ? '' : `; ${words.outside(`${Math.round(100 * outside)}\u00a0%`)}`}
      </p>
    </section>
  );
}
