import { dot, line, type Markish, ruleY } from '@observablehq/plot';
import type { ChartPoint, ControlChart } from '@provinghouse/core';
import { acrossAxis, upAxis } from './sheet/axis.ts';
import type { KeyEntry } from './sheet/key.ts';
import { numberWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { diamond, disc } from './sheet/symbol.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';

export interface ControlChartFigure {
  readonly instrument: string;
  readonly unit: string;
  readonly chart: ControlChart;
}

const dash = (em: number) => `${0.5 * em},${0.35 * em}`;

/** Check readings of an instrument in their order: how far each was off, the limits that the first of them set, what its class or certificate allows. */
export function controlChartFigure(data: ControlChartFigure, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const { points } = data.chart;
  return sheet(
    {
      label: inWords(data),
      key: keyOf(data.chart, ink),
      height: 18 * em,
      margin: { left: 5.2 * em, right: 1.2 * em, bottom: 3.6 * em },
      plot: {
        x: { domain: [0.5, Math.max(points.length, 5) + 0.5] },
        y: { domain: extentOf(data.chart) },
        marks: [
          ...acrossAxis({ label: 'check reading, in order', ticks: numbersTo(points.length), words: String }, ink),
          ...upAxis({ label: `off by, ${data.unit}` }, ink, 4.4 * em),
          ...limitMarks(data.chart, ink),
          ...pointMarks(points, ink),
        ],
      },
    },
    setting,
  );
}

function limitMarks({ centre, lower, upper }: ControlChart, ink: Ink): Markish[] {
  const limits = [lower, upper].filter((limit) => limit !== null);
  return [
    ruleY([0], { stroke: ink.ink, strokeWidth: ink.line }),
    ...(centre === null ? [] : [ruleY([centre], { stroke: ink.accent, strokeWidth: ink.line })]),
    ruleY(limits, { stroke: ink.accent, strokeWidth: 1.2 * ink.line, strokeDasharray: dash(ink.em) }),
  ];
}

function pointMarks(points: readonly ChartPoint[], ink: Ink): Markish[] {
  const numbered = points.map((point, at) => ({ ...point, number: at + 1 }));
  const step = (sign: 1 | -1) =>
    line(numbered, {
      x: 'number',
      y: ({ allowed }: ChartPoint) => (allowed === null ? Number.NaN : sign * allowed),
      stroke: ink.soft,
      strokeWidth: ink.line,
      curve: 'step',
    });
  const place = { x: 'number', y: 'deviation', r: 0.36 * ink.em } as const;
  return [
    step(1),
    step(-1),
    line(numbered, { x: 'number', y: 'deviation', stroke: ink.soft, strokeWidth: 0.7 * ink.line }),
    dot(
      numbered.filter(({ signals }) => signals.length === 0),
      { ...place, symbol: disc, fill: ink.ink },
    ),
    dot(
      numbered.filter(({ signals }) => signals.length > 0),
      { ...place, r: 0.5 * ink.em, symbol: diamond, fill: ink.ground, stroke: ink.ink, strokeWidth: 1.6 * ink.line },
    ),
  ];
}

function extentOf({ points, lower, upper }: ControlChart): [number, number] {
  const allowed = points.flatMap((point) => (point.allowed === null ? [] : [point.allowed, -point.allowed]));
  const values = [0, lower ?? 0, upper ?? 0, ...allowed, ...points.map(({ deviation }) => deviation)];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const margin = 0.08 * (most - least) || 1;
  return [least - margin, most + margin];
}

function numbersTo(count: number): number[] {
  const step = Math.max(1, Math.ceil(count / 12));
  return Array.from({ length: Math.floor(count / step) }, (_, at) => (at + 1) * step);
}

function keyOf({ points, lower }: ControlChart, ink: Ink): KeyEntry[] {
  const isAllowed = points.some(({ allowed }) => allowed !== null);
  return [
    { symbol: disc, words: 'check reading' },
    ...(points.some(({ signals }) => signals.length > 0)
      ? [{ symbol: diamond, words: 'look at it', paint: 'hollow', weight: 1.6 } as const]
      : []),
    ...(lower === null
      ? []
      : [
          { symbol: 'stroke', words: 'mean', paint: 'accent' } as const,
          { symbol: 'stroke', words: 'limits', paint: 'accent', dash: dash(ink.em), weight: 1.2 } as const,
        ]),
    ...(isAllowed ? [{ symbol: 'stroke', words: 'allowed', paint: 'line' } as const] : []),
  ];
}

function inWords({ instrument, unit, chart }: ControlChartFigure): string {
  const { points, lower, upper } = chart;
  const told = points.filter(({ signals }) => signals.length > 0).length;
  const limits =
    lower === null || upper === null
      ? 'no limits yet'
      : `limits ${numberWords(lower, 3)} to ${numberWords(upper, 3)} ${unit}`;
  return `Check readings of ${instrument}: ${points.length}, ${limits}, ${told} to be looked at.`;
}

/** The readings of the chart, one a row. */
export function controlChartTable({ unit, chart }: ControlChartFigure): FigureTable {
  return {
    columns: [
      textColumn('checked_at', 'when'),
      numberColumn(`deviation_${unit}`, 'off by', unit, { digits: 3, of: 'largest' }),
      numberColumn(`allowed_${unit}`, 'allowed', unit, { digits: 3, of: 'largest' }),
      textColumn('signals', 'what is told'),
    ],
    rows: chart.points.map(({ at, deviation, allowed, signals }) => [at, deviation, allowed, signals.join('; ')]),
  };
}
