import { useComputedColorScheme } from '@mantine/core';
import type { TracePreview } from '@provinghouse/contract';
import type { TraceReading } from '@provinghouse/core';
import { useEffect, useRef } from 'react';
import { Figure } from '../../components/figure.tsx';
import { MeasuredOrigin } from '../../components/measured-origin.tsx';
import { axesOf, signalOf } from '../../components/trace/curve-axis.ts';
import { listedEvents, marksOf } from '../../components/trace/trace-mark.ts';
import { plotTrace } from '../../components/trace/trace-plot.ts';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

interface PreviewReadingProps {
  readonly preview: TracePreview;
  readonly name: string;
}

/** The curve a file would be drawn as, and the main things it would say. */
export function PreviewReading({ preview, name }: PreviewReadingProps) {
  const words = text.pulls.preview;
  const { reading, curve } = preview;
  if (reading === null || curve === null) return <p className="soft">{words.open}</p>;
  return (
    <div className="pulls-says">
      <Plot preview={preview} name={name} />
      <div>
        <dl className="facts">
          <div className="fact">
            <dt>{words.maximum}</dt>
            <dd className="pulls-maximum">
              {preview.maximum === null ? (
                <Figure value={reading.maximumForce_kN} unit="kN" isAtLeast={reading.maximumIsAtLeast} />
              ) : (
                <MeasuredOrigin measured={preview.maximum} name={words.maximum} />
              )}
            </dd>
          </div>
          <div className="fact">
            <dt>{words.time}</dt>
            <dd>
              <Figure value={reading.timeAtMaximum_s} unit="s" />
            </dd>
          </div>
          <div className="fact">
            <dt>{words.parting}</dt>
            <dd>
              <Figure value={reading.partingForce_kN} unit="kN" />
            </dd>
          </div>
          <div className="fact">
            <dt>{words.samples}</dt>
            <dd>{samplesText(reading)}</dd>
          </div>
          <div className="fact">
            <dt>{words.events}</dt>
            <dd>
              <Events reading={reading} />
            </dd>
          </div>
        </dl>
        <Doubts doubts={preview.doubts} />
      </div>
    </div>
  );
}

function samplesText({ samples, sampleRate_Hz }: TraceReading): string {
  const count = figureText({ value: samples, unit: '' });
  return sampleRate_Hz === null
    ? count
    : text.pulls.preview.rate(count, figureText({ value: sampleRate_Hz, unit: 'Hz' }));
}

function Events({ reading }: { readonly reading: TraceReading }) {
  const words = text.pulls.preview;
  const events = listedEvents(reading);
  if (events.length === 0) return words.noEvents;
  return (
    <ol className="pulls-events">
      {events.map((event, at) => (
        <li key={`${event.kind} ${event.time_s}`}>
          {at + 1}{' '}
          {words.eventAt(
            text.trace.kind[event.kind],
            figureText({ value: event.force_kN, unit: 'kN' }),
            figureText({ value: event.time_s, unit: 's' }),
          )}
        </li>
      ))}
    </ol>
  );
}

function Doubts({ doubts }: { readonly doubts: readonly string[] }) {
  const words = text.pulls.preview;
  if (doubts.length === 0) return <p className="soft">{words.noDoubts}</p>;
  return (
    <div className="pulls-doubts">
      <p>{words.doubts}</p>
      <ul>
        {doubts.map((doubt) => (
          <li key={doubt}>{doubt}</li>
        ))}
      </ul>
    </div>
  );
}

function Plot({ preview, name }: PreviewReadingProps) {
  const host = useRef<HTMLDivElement>(null);
  const ground = useComputedColorScheme('light', { getInitialValueInEffect: false });
  const { curve: thinned, reading, maximum } = preview;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ground is read from the style sheet while drawing
  useEffect(() => {
    const element = host.current;
    if (element === null || thinned === null || reading === null) return;
    const curve = { pull: '', ...thinned };
    const axis = axesOf(curve)[0];
    const scene = {
      xs: axis === undefined ? thinned.force_kN.map((_, at) => at) : (signalOf(curve, axis) ?? []),
      forces: thinned.force_kN,
      xLabel: axis === undefined ? text.pulls.preview.samples : text.trace.axisLabels[axis],
      forceLabel: text.trace.force,
      lines: [],
      marks: axis === undefined ? [] : marksOf(reading, maximum, { curve, axis }),
    };
    return plotTrace(element, scene, { onPoint: () => undefined }).destroy;
  }, [thinned, reading, maximum, ground]);
  return <div ref={host} className="trace-host pulls-plot" role="img" aria-label={text.pulls.preview.plot(name)} />;
}
