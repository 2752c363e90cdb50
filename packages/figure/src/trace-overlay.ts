import { line, link, type Markish, ruleY, text } from '@observablehq/plot';
import { apart } from './sheet/apart.ts';
import { acrossAxis, upAxis } from './sheet/axis.ts';
import type { KeyEntry } from './sheet/key.ts';
import { tickWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';

/** One trace among others. Places and forces go together; a place is null where the recording has a hole. */
export interface OverlaidTrace {
  readonly piece: string;
  readonly product: string;
  readonly pull: string;
  readonly places: readonly (number | null)[];
  readonly forces_kN: readonly number[];
  readonly maximum_kN: number | null;
  readonly expandedUncertainty_kN: number | null;
  /** Known only as “at least”. */
  readonly isAtLeast: boolean;
  /** Where the trace has its maximum as read, which a spike may overtop; null where it was not read. */
  readonly top: OverlaidTop | null;
}

export interface OverlaidTop {
  readonly place: number;
  readonly force_kN: number;
}

/** A force that traces are held against. */
export interface OverlaidRule {
  readonly words: string;
  readonly force_kN: number;
}

/** What force is drawn against. */
export type OverlayAxis = 'extension' | 'table' | 'time';

export interface TraceOverlay {
  readonly axis: OverlayAxis;
  readonly traces: readonly OverlaidTrace[];
  readonly rules: readonly OverlaidRule[];
}

const axisWords: Readonly<Record<OverlayAxis, string>> = {
  extension: 'extension, mm',
  table: 'table travel, mm',
  time: 'time, s',
};

/** Dashes in heights of the type: told apart without any colour. */
const dashes: readonly (readonly number[] | null)[] = [
  null,
  [1.1, 0.5],
  [0.25, 0.4],
  [1.6, 0.4, 0.3, 0.4],
  [0.55, 0.35],
  [1.6, 0.35, 0.3, 0.35, 0.3, 0.35],
];

/**
 * Traces over each other with the forces they are held against. Each bears a number at its maximum, which the key names; its stroke is that of
 * its product where there are several products, else its own.
 */
export function traceOverlay(data: TraceOverlay, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const margin = { left: 3.8 * em, right: 1.2 * em, top: 2.6 * em, bottom: 4.4 * em };
  const domain = domainOf(data);
  const height = 31 * em;
  const around = {
    domain,
    plotWidth: setting.width - margin.left - margin.right,
    plotHeight: height - margin.top - margin.bottom,
    ink,
  };
  return sheet(
    {
      label: inWords(data),
      key: data.traces.map((trace, at): KeyEntry => keyOf(data, { trace, at }, ink)),
      height,
      margin,
      plot: {
        x: { domain: [domain.left, domain.right], label: null },
        y: { domain: [domain.low, domain.high], label: null },
        marks: [
          ...acrossAxis({ label: axisWords[data.axis] }, ink),
          ...upAxis({ label: 'force, kN' }, ink, 3.4 * em),
          ...data.rules.map((rule) => ruleLine(rule, ink)),
          ...data.traces.map((trace, at) => traceMark(trace, strokeOf(data, at, ink))),
          ...ruleWords(data, around),
          ...numberMarks(data, around),
        ],
      },
    },
    setting,
  );
}

interface Stroke {
  readonly paint: 'ink' | 'accent';
  readonly colour: string;
  readonly width: number;
  /** In units of the figure; null for a whole line. */
  readonly dash: string | null;
}

function strokeOf({ traces }: TraceOverlay, at: number, ink: Ink): Stroke {
  const products = [...new Set(traces.map(({ product }) => product))];
  const kind = products.length > 1 ? products.indexOf(traces[at]?.product ?? '') : at;
  const dash = dashes[kind % dashes.length] ?? null;
  const paint = kind % 2 === 0 ? 'ink' : 'accent';
  return {
    paint,
    colour: paint === 'ink' ? ink.ink : ink.accent,
    width: (Math.floor(kind / dashes.length) % 2 === 0 ? 1.1 : 2) * ink.line,
    dash: dash === null ? null : dash.map((part) => part * ink.em).join(' '),
  };
}

interface Numbered {
  readonly trace: OverlaidTrace;
  readonly at: number;
}

function keyOf(data: TraceOverlay, { trace, at }: Numbered, ink: Ink): KeyEntry {
  const stroke = strokeOf(data, at, ink);
  return {
    symbol: 'stroke',
    words: `${at + 1} ${trace.piece}`,
    weight: stroke.width / ink.line,
    ...(stroke.paint === 'accent' ? { paint: 'accent' } : {}),
    ...(stroke.dash === null ? {} : { dash: stroke.dash }),
  };
}

function traceMark({ places, forces_kN }: OverlaidTrace, stroke: Stroke): Markish {
  const points = forces_kN.map((force, at) => ({ place: places[at] ?? Number.NaN, force }));
  return line(points, {
    x: 'place',
    y: 'force',
    stroke: stroke.colour,
    strokeWidth: stroke.width,
    strokeLinejoin: 'round',
    strokeLinecap: 'butt',
    ...(stroke.dash === null ? {} : { strokeDasharray: stroke.dash }),
  });
}

function ruleLine({ force_kN }: OverlaidRule, ink: Ink): Markish {
  return ruleY([force_kN], { stroke: ink.accent, strokeWidth: 0.8 * ink.line });
}

/** Each on a ground of its own over the traces, at the left where they have not risen yet, and clear of the others. */
function ruleWords({ rules }: TraceOverlay, { domain, plotHeight, ink }: Around): Markish[] {
  const wished = rules.map(({ force_kN }) => ((domain.high - force_kN) / (domain.high - domain.low)) * plotHeight);
  const spread = apart(wished, { gap: 1.35 * ink.em, from: ink.em, to: plotHeight });
  return rules.map(({ words, force_kN }, at) =>
    text([words], {
      x: domain.left,
      y: force_kN,
      dx: 0.6 * ink.em,
      dy: (spread[at] ?? 0) - (wished[at] ?? 0) - 0.25 * ink.em,
      textAnchor: 'start',
      lineAnchor: 'bottom',
      text: (said: string) => said,
      fill: ink.accent,
      stroke: ink.ground,
      strokeWidth: 3 * ink.line,
    }),
  );
}

interface Around {
  readonly domain: Domain;
  readonly plotWidth: number;
  readonly plotHeight: number;
  readonly ink: Ink;
}

/** Numbers in a row along the top, kept apart, each with a hair down to the top of its trace. */
function numberMarks({ traces }: TraceOverlay, { domain, plotWidth, ink }: Around): Markish[] {
  const tops = traces.flatMap((trace, at) => {
    const top = topOf(trace);
    return top === null ? [] : [{ ...top, words: String(at + 1) }];
  });
  const span = domain.right - domain.left;
  const wished = tops.map(({ place }) => ((place - domain.left) / span) * plotWidth);
  const spread = apart(wished, { gap: 1.7 * ink.em, from: 0.6 * ink.em, to: plotWidth - 0.6 * ink.em });
  const placed = tops.map((top, at) => ({ ...top, shown: domain.left + ((spread[at] ?? 0) / plotWidth) * span }));
  return [
    link(placed, {
      x1: 'shown',
      x2: 'place',
      y1: domain.high,
      y2: 'force_kN',
      stroke: ink.soft,
      strokeWidth: 0.5 * ink.line,
    }),
    text(placed, {
      x: 'shown',
      y: domain.high,
      dy: -0.5 * ink.em,
      lineAnchor: 'bottom',
      text: 'words',
      fontWeight: 600,
      fill: ink.ink,
    }),
  ];
}

/** The maximum as read, else the highest point drawn; null for a trace without any. */
function topOf({ places, forces_kN, top: read }: OverlaidTrace): OverlaidTop | null {
  if (read !== null) return read;
  return forces_kN.reduce<OverlaidTop | null>((top, force_kN, at) => {
    const place = places[at] ?? null;
    return place !== null && (top === null || force_kN > top.force_kN) ? { place, force_kN } : top;
  }, null);
}

interface Domain {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

function domainOf({ traces, rules }: TraceOverlay): Domain {
  const across = extremes(traces.flatMap(({ places }) => extremesOf(places)));
  const up = extremes([
    0,
    ...traces.flatMap(({ forces_kN }) => extremesOf(forces_kN)),
    ...rules.map(({ force_kN }) => force_kN),
  ]);
  const room = 0.02 * (across.most - across.least || 1);
  return {
    left: across.least - room,
    right: across.most + room,
    low: up.least,
    high: up.most + 0.08 * (up.most - up.least || 1),
  };
}

interface Extremes {
  readonly least: number;
  readonly most: number;
}

function extremes(values: readonly (number | null)[]): Extremes {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value === null) continue;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return least > most ? { least: 0, most: 1 } : { least, most };
}

function extremesOf(values: readonly (number | null)[]): number[] {
  const { least, most } = extremes(values);
  return values.some((value) => value !== null) ? [least, most] : [];
}

/** One row for each trace. */
export function traceOverlayTable({ axis, traces }: TraceOverlay): FigureTable {
  const unit = axis === 'time' ? 's' : 'mm';
  return {
    columns: [
      numberColumn('number', 'number', null),
      textColumn('piece', 'piece'),
      textColumn('product', 'product'),
      textColumn('pull', 'pull'),
      numberColumn('maximum_kN', 'maximum', 'kN'),
      numberColumn('expanded_uncertainty_kN', 'U', 'kN', { digits: 2 }),
      textColumn('use', 'counts as'),
      numberColumn(`${axis}_at_maximum_${unit}`, `${axisWords[axis].split(',')[0]} there`, unit),
    ],
    rows: traces.map((trace, at) => [
      at + 1,
      trace.piece,
      trace.product,
      trace.pull,
      trace.maximum_kN,
      trace.expandedUncertainty_kN,
      trace.maximum_kN === null ? null : trace.isAtLeast ? 'at least' : 'value',
      topOf(trace)?.place ?? null,
    ]),
  };
}

/** Every point drawn, one row each, the traces one after the other. */
export function traceOverlayPoints({ axis, traces }: TraceOverlay): FigureTable {
  const unit = axis === 'time' ? 's' : 'mm';
  return {
    columns: [
      textColumn('piece', 'piece'),
      textColumn('pull', 'pull'),
      numberColumn(`${axis}_${unit}`, axisWords[axis].split(',')[0] ?? axis, unit),
      numberColumn('force_kN', 'force', 'kN'),
    ],
    rows: traces.flatMap(({ piece, pull, places, forces_kN }) =>
      forces_kN.map((force, at) => [piece, pull, places[at] ?? null, force]),
    ),
  };
}

function inWords({ axis, traces, rules }: TraceOverlay): string {
  const named = traces.map(({ piece, maximum_kN }, at) =>
    maximum_kN === null
      ? `${at + 1} ${piece}`
      : `${at + 1} ${piece}, ${tickWords(Number(maximum_kN.toPrecision(4)))} kN`,
  );
  const lines = rules.length === 0 ? '' : ` Lines: ${rules.map(({ words }) => words).join('; ')}.`;
  return `Force against ${axisWords[axis].split(',')[0]} of ${traces.length} pulls: ${named.join('; ')}.${lines}`;
}
