import { SegmentedControl } from '@mantine/core';
import type { PieceFinding, ProductFinding, PullCurve } from '@provinghouse/contract';
import type { TraceReading } from '@provinghouse/core';
import { type KeyboardEvent, useRef, useState } from 'react';
import { type Axis, axesOf } from '../../components/trace/curve-axis.ts';
import type { TracePlot } from '../../components/trace/trace-plot.ts';
import { text } from '../../lib/text.ts';
import { useTracePlot } from './use-trace-plot.ts';

interface TraceFigureProps {
  readonly piece: PieceFinding;
  readonly product: ProductFinding;
  readonly reading: TraceReading;
  readonly curve: PullCurve;
}

/** The trace of a pull with its rule lines and marks; the axis can be chosen, a part zoomed into by dragging or by keys. */
export function TraceFigure({ piece, product, reading, curve }: TraceFigureProps) {
  const axes = axesOf(curve);
  const [axis, setAxis] = useState<Axis>(axes[0] ?? 'time');
  const host = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLOutputElement>(null);
  const plot = useTracePlot({ host, readout }, { piece, product, reading, curve, axis });
  return (
    <figure className="trace">
      <div className="trace-bar">
        <AxisChoice axes={axes} axis={axis} onChoose={setAxis} />
        <ZoomTools plot={plot} />
      </div>
      <div
        className="trace-host"
        ref={host}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the figure takes keys that zoom and move it
        tabIndex={0}
        aria-label={text.trace.figure(text.trace.axes[axis])}
        onKeyDown={(event) => onKey(event, plot.current)}
      />
      <figcaption className="trace-caption">
        <output ref={readout} className="trace-readout" aria-live="off">
          {text.trace.readoutIdle}
        </output>
        <span className="soft small">
          {text.trace.help}
          {reading.spikes.length > 0 ? ` ${text.trace.legendSpikes(reading.spikes.length)}.` : ''}
        </span>
      </figcaption>
    </figure>
  );
}

interface AxisChoiceProps {
  readonly axes: readonly Axis[];
  readonly axis: Axis;
  readonly onChoose: (axis: Axis) => void;
}

function AxisChoice({ axes, axis, onChoose }: AxisChoiceProps) {
  return (
    <div className="trace-axes">
      <span className="soft" id="trace-axis">
        {text.trace.axis}
      </span>
      <SegmentedControl
        aria-labelledby="trace-axis"
        value={axis}
        onChange={(value) => onChoose(axes.find((one) => one === value) ?? axis)}
        data={axes.map((one) => ({ value: one, label: text.trace.axes[one] }))}
        transitionDuration={0}
        withItemsBorders={false}
        classNames={{ root: 'choice', label: 'choice-label', indicator: 'choice-indicator', control: 'choice-one' }}
      />
    </div>
  );
}

function ZoomTools({ plot }: { readonly plot: { readonly current: TracePlot | null } }) {
  const tools = [
    [text.trace.zoomIn, '+', () => plot.current?.zoom(0.7)],
    [text.trace.zoomOut, '\u2212', () => plot.current?.zoom(1 / 0.7)],
    [text.trace.left, '\u2190', () => plot.current?.move(-0.2)],
    [text.trace.right, '\u2192', () => plot.current?.move(0.2)],
  ] as const;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a border and a legend of its own
    <div className="trace-tools" role="group" aria-label={text.trace.tools}>
      {tools.map(([name, sign, act]) => (
        <button key={name} type="button" className="press" aria-label={name} onClick={act}>
          {sign}
        </button>
      ))}
      <button type="button" className="press" onClick={() => plot.current?.whole()}>
        {text.trace.whole}
      </button>
    </div>
  );
}

function onKey(event: KeyboardEvent, plot: TracePlot | null): void {
  const act = keys[event.key];
  if (!act || plot === null || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  event.stopPropagation();
  act(plot);
}

const keys: Readonly<Record<string, (plot: TracePlot) => void>> = {
  '+': (plot) => plot.zoom(0.7),
  '=': (plot) => plot.zoom(0.7),
  '-': (plot) => plot.zoom(1 / 0.7),
  ArrowLeft: (plot) => plot.move(-0.1),
  ArrowRight: (plot) => plot.move(0.1),
  '0': (plot) => plot.whole(),
};
