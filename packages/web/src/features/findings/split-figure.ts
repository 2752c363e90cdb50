import { element, type FigureSetting, type FigureTable, type Ink, inkOf } from '@provinghouse/figure';
import { text } from '../../lib/text.ts';

/** The step the bar makes from the minimum, and from there the step the steel makes, in per cent. */
export interface SplitBar {
  readonly product: string;
  readonly size_pct: number;
  /** Both together; null where no stress of a grade was claimed. */
  readonly total_pct: number | null;
}

/** Advance of a letter of the sans in ems, on the wide side: enough to keep a column of names free. */
const letterWidth = 0.6;

interface Scale {
  readonly ink: Ink;
  readonly em: number;
  /** Right edge of the names. */
  readonly names: number;
  readonly place: (percent: number) => number;
  readonly ticks: readonly number[];
}

/** A row for each product: from the minimum first the step by size, below it from there the step by steel. Leftwards is a loss. */
export function splitFigure(bars: readonly SplitBar[], setting: FigureSetting): SVGSVGElement {
  const scale = scaleOf(bars, setting);
  const { em, ink } = scale;
  const row = 2.5 * em;
  const top = 2.4 * em;
  const bottom = top + bars.length * row;
  const height = bottom + 3 * em;
  const { width } = setting;
  const make: Make = (name, attributes, words = []) => element(setting.document, name, attributes, words);
  const drawn = make('svg', {
    role: 'img',
    'aria-label': inWords(bars),
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    'font-family': ink.family,
    'font-size': em,
    'font-variant': 'tabular-nums',
    fill: ink.ink,
  }) as SVGSVGElement; // an svg was asked for
  drawn.append(
    ...keyOf(scale, make),
    ...axisOf(scale, { top, bottom }, make),
    ...bars.flatMap((bar, at) => rowOf(bar, scale, { y: top + at * row, make })),
  );
  return drawn;
}

function scaleOf(bars: readonly SplitBar[], setting: FigureSetting): Scale {
  const ink = inkOf(setting);
  const { em } = ink;
  const ends = bars.flatMap((bar) => [bar.size_pct, bar.total_pct ?? bar.size_pct]);
  const span = Math.max(2, ...ends) - Math.min(-2, ...ends);
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((one) => span / one <= 8) ?? 1000;
  const least = Math.floor(Math.min(-2, ...ends) / step) * step;
  const greatest = Math.ceil(Math.max(2, ...ends) / step) * step;
  const names = letterWidth * em * Math.max(6, ...bars.map((bar) => bar.product.length)) + em;
  const right = setting.width - 4.6 * em;
  return {
    ink,
    em,
    names,
    place: (percent) => names + ((right - names) * (percent - least)) / (greatest - least),
    ticks: Array.from({ length: Math.round((greatest - least) / step) + 1 }, (_, at) => least + at * step),
  };
}

type Make = (
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  words?: readonly string[],
) => SVGElement;

function rowOf(bar: SplitBar, { ink, em, place }: Scale, { y, make }: { readonly y: number; readonly make: Make }) {
  const total = bar.total_pct ?? bar.size_pct;
  const box = (from: number, to: number) => ({
    x: Math.min(place(from), place(to)),
    width: Math.abs(place(to) - place(from)),
  });
  const high = 0.75 * em;
  const middle = y + 1.25 * em;
  return [
    make('text', { x: 0, y: middle + 0.35 * em }, [bar.product]),
    make('rect', { ...box(0, bar.size_pct), y: middle - high - 1, height: high, fill: ink.band, stroke: ink.accent }),
    make('rect', { ...box(bar.size_pct, total), y: middle + 1, height: high, fill: ink.accent }),
    make('line', {
      x1: place(bar.size_pct),
      x2: place(bar.size_pct),
      y1: middle - high - 1,
      y2: middle + high + 1,
      stroke: ink.accent,
    }),
    make(
      'text',
      { x: Math.max(place(0), place(bar.size_pct), place(total)) + 0.5 * em, y: middle + 0.35 * em, fill: ink.soft },
      [percent(total)],
    ),
  ];
}

function axisOf(
  { ink, em, place, ticks }: Scale,
  { top, bottom }: { readonly top: number; readonly bottom: number },
  make: Make,
) {
  const lines = ticks.flatMap((tick) => [
    make('line', {
      x1: place(tick),
      x2: place(tick),
      y1: top,
      y2: bottom,
      stroke: tick === 0 ? ink.ink : ink.hair,
      'stroke-width': tick === 0 ? ink.line : 0.5 * ink.line,
    }),
    make('text', { x: place(tick), y: bottom + 1.1 * em, 'text-anchor': 'middle', fill: ink.soft }, [signed(tick)]),
  ]);
  const [first = 0, last = 0] = [ticks[0], ticks.at(-1)];
  const label = { x: (place(first) + place(last)) / 2, y: bottom + 2.5 * em, 'text-anchor': 'middle', fill: ink.soft };
  return [...lines, make('text', label, [text.findings.splitAxis])];
}

function keyOf({ ink, em, names }: Scale, make: Make) {
  const { size, steel } = text.findings.splitLegend;
  const box = { y: 0.35 * em, width: 1.5 * em, height: 0.75 * em };
  const second = names + 2.4 * em + letterWidth * em * (size.length + 1);
  return [
    make('rect', { ...box, x: names, fill: ink.band, stroke: ink.accent }),
    make('text', { x: names + 2 * em, y: em, fill: ink.soft }, [size]),
    make('rect', { ...box, x: second, fill: ink.accent }),
    make('text', { x: second + 2 * em, y: em, fill: ink.soft }, [steel]),
  ];
}

function inWords(bars: readonly SplitBar[]): string {
  const { size, steel } = text.findings.splitLegend;
  const each = bars.map((bar) => {
    const step =
      bar.total_pct === null
        ? ''
        : `, ${steel} ${percent(steelStep(bar) ?? 0)}, ${text.findings.splitHead.total} ${percent(bar.total_pct)}`;
    return `${bar.product}: ${size} ${percent(bar.size_pct)}${step}`;
  });
  return `${text.findings.split}, ${text.findings.splitAxis}. ${each.join('; ')}.`;
}

/** What the step of the steel adds to the step of the size: the length of its bar. */
function steelStep({ size_pct, total_pct }: SplitBar): number | null {
  return total_pct === null ? null : total_pct - size_pct;
}

function percent(value: number): string {
  return `${signed(Number(value.toFixed(1)))}\u00a0%`;
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${value}`.replace('-', '\u2212');
}

/** The steps of the figure, a row for each product. */
export function splitFigureTable(bars: readonly SplitBar[]): FigureTable {
  const { splitHead: head } = text.findings;
  const number = (key: string, heading: string) =>
    ({ key, heading, unit: '%', isNumber: true, shown: { digits: 3, of: 'each' } }) as const;
  return {
    columns: [
      { key: 'product', heading: head.product, unit: null, isNumber: false, shown: { digits: 4, of: 'largest' } },
      number('step_by_size_pct', head.size),
      number('step_by_steel_pct', head.steel),
      number('together_pct', head.total),
    ],
    rows: bars.map((bar) => [bar.product, bar.size_pct, steelStep(bar), bar.total_pct]),
  };
}
