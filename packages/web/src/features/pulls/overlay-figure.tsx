import type { CampaignFinding } from '@provinghouse/contract';
import {
  csvOf,
  type FigureSetting,
  type OverlayAxis,
  type TraceOverlay,
  traceOverlay,
  traceOverlayPoints,
  traceOverlayTable,
} from '@provinghouse/figure';
import { useMemo, useState } from 'react';
import { ChoiceField } from '../../components/form-field.tsx';
import { Drawing, Numbers, SaveButtons } from '../../components/statistic-figure.tsx';
import { save } from '../../lib/save-figure.ts';
import { text } from '../../lib/text.ts';
import type { Recording } from './overlay.tsx';
import { overlaid, rulesOf } from './overlay-data.ts';
import { useCurves } from './use-curves.ts';

interface OverlayFigureProps {
  readonly code: string;
  readonly recordings: readonly Recording[];
  readonly finding: CampaignFinding | null;
}

const axes: readonly OverlayAxis[] = ['extension', 'table', 'time'];

/** The recordings in one figure, their maxima in a table beside it, and a way to take both along. */
export default function OverlayFigure({ code, recordings, finding }: OverlayFigureProps) {
  const words = text.pulls.overlay;
  const { curves, missing, isReading } = useCurves(
    code,
    recordings.map(({ pull }) => pull),
  );
  const [chosen, setChosen] = useState<OverlayAxis | null>(null);
  const having = (axis: OverlayAxis) =>
    recordings.filter((one) => {
      const curve = curves.get(one.pull);
      return curve !== undefined && overlaid(one, curve, { axis, finding: null }) !== null;
    }).length;
  // The most telling of those that the most recordings have.
  const usual = axes.toSorted((a, b) => having(b) - having(a))[0];
  const axis = chosen ?? usual ?? 'time';
  const drawn = recordings.flatMap((one) => {
    const curve = curves.get(one.pull);
    const trace = curve === undefined ? null : overlaid(one, curve, { axis, finding });
    return trace === null ? [] : [trace];
  });
  const lacking = recordings.filter(({ pull }) => curves.has(pull) && !drawn.some((one) => one.pull === pull));
  const rules = rulesOf([...new Set(drawn.map(({ product }) => product))], finding);
  // Told by what it shows: the same traces in the same axis are not drawn anew when the page is.
  const told = JSON.stringify([axis, drawn.map(({ pull, maximum_kN }) => [pull, maximum_kN]), rules]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const data: TraceOverlay = useMemo(() => ({ axis, traces: drawn, rules }), [told]);
  const draw = useMemo(() => (setting: FigureSetting) => traceOverlay(data, setting), [data]);
  const title = words.title(words.axes[axis], drawn.length);
  const table = traceOverlayTable(data);
  const file = `${code}-traces`;
  return (
    <figure className="statistic pulls-overlay">
      <figcaption>
        <h3>{title}</h3>
        <p className="soft small">{words.how}</p>
      </figcaption>
      <div className="pulls-axis">
        <ChoiceField
          label={words.axis}
          value={axis}
          choices={axes
            .filter((one) => having(one) > 0 || one === axis)
            .map((one) => ({ value: one, label: words.axes[one] }))}
          onChange={(value) => setChosen(axes.find((one) => one === value) ?? null)}
        />
        <p className="soft" role="status">
          {isReading ? words.reading : ''}
          {lacking.length === 0 ? '' : words.lacks(lacking.map(({ piece }) => piece).join(', '), words.axes[axis])}
          {missing.length === 0 ? '' : ` ${words.unread(missing.join(', '))}`}
        </p>
      </div>
      <div className="pulls-beside">
        <Drawing draw={draw} />
        <Numbers table={table} title={words.table} />
      </div>
      <div className="statistic-foot">
        <SaveButtons title={title} file={file} draw={draw} table={table} />
        <button
          type="button"
          className="press"
          onClick={() =>
            save(new Blob([csvOf(traceOverlayPoints(data))], { type: 'text/csv;charset=utf-8' }), `${file}-points.csv`)
          }
        >
          {words.points}
        </button>
      </div>
    </figure>
  );
}
