import { dot, type Markish, ruleX, ruleY, text } from '@observablehq/plot';
import { acrossAxis } from './sheet/axis.ts';
import type { KeyEntry } from './sheet/key.ts';
import { numberWords, percentWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { disc, headLeft, headRight, stop } from './sheet/symbol.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';
import { fitted, strongWidth, textWidth } from './sheet/text-width.ts';

/** Two products compared; a pair of core's comparison serves as it is. */
export interface ComparedInterval {
  readonly first: string;
  readonly second: string;
  /** Mean of the first less mean of the second. */
  readonly difference: number;
  /** Limits that hold for all pairs jointly; null when the pair could not be judged. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly distinguishable: boolean | null;
  readonly reason: string | null;
}

export interface ComparisonIntervals {
  readonly quantity: string;
  readonly unit: string;
  readonly confidence: number;
  readonly pairs: readonly ComparedInterval[];
  /** The scale, where pairs of one comparison are drawn in several figures. */
  readonly extent?: Extent;
}

export interface Extent {
  readonly low: number;
  readonly high: number;
}

/** A scale for all pairs. An interval many times as wide as the others is cut, lest it flatten them. */
export function comparisonExtent(pairs: readonly ComparedInterval[]): Extent {
  const widths = pairs.flatMap(({ lower, upper }) => (lower === null || upper === null ? [] : [(upper - lower) / 2]));
  const usual = widths.toSorted((a, b) => a - b)[(widths.length - 1) >> 1] ?? 0;
  const reach = pairs.flatMap(({ difference, lower, upper }) => [
    difference,
    Math.max(lower ?? difference, difference - 3 * usual),
    Math.min(upper ?? difference, difference + 3 * usual),
  ]);
  const low = Math.min(0, ...reach);
  const high = Math.max(0, ...reach);
  const room = high > low ? 0.04 * (high - low) : 1;
  return { low: low - room, high: high + room };
}

/**
 * Differences of means, each pair with an interval that holds for all pairs at once, about the line of no difference. Told
 * apart: filled disc on a strong line. Not distinguishable: ring on a thin line, and the words. Not judged: words alone.
 */
export function comparisonIntervals(data: ComparisonIntervals, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const { pairs } = data;
  const extent = data.extent ?? comparisonExtent(pairs);
  const names = Math.min(Math.max(0, ...pairs.map((pair) => textWidth(nameOf(pair), em))), 0.34 * setting.width);
  const beside = Math.min(Math.max(0, ...pairs.map((pair) => strongWidth(verdictOf(pair), em))), 0.3 * setting.width);
  const rows = Math.max(pairs.length, 1);
  return sheet(
    {
      label: inWords(data),
      key: keyOf(data),
      height: rows * 2 * em + 3.6 * em,
      margin: { left: names + 1.4 * em, right: beside + 1.6 * em, bottom: 3.6 * em },
      plot: {
        x: { domain: [extent.low, extent.high] },
        y: { domain: [rows, 0], axis: null },
        marks: [
          ...acrossAxis({ label: `difference in mean ${data.quantity}, ${data.unit}` }, ink),
          ruleX([0], { stroke: ink.accent, strokeWidth: 1.6 * ink.line }),
          ...pairs.flatMap((pair, row) => pairMarks(pair, row + 0.5, { ink, extent, names, beside })),
        ],
      },
    },
    setting,
  );
}

interface On {
  readonly ink: Ink;
  readonly extent: Extent;
  readonly names: number;
  readonly beside: number;
}

function pairMarks(pair: ComparedInterval, y: number, { ink, extent, names, beside }: On): Markish[] {
  const { em } = ink;
  const label = { y: () => y, textAnchor: 'start', text: (words: string) => words } as const;
  return [
    text([fitted(nameOf(pair), em, names)], { ...label, frameAnchor: 'left', dx: -names - 1.4 * em, fill: ink.ink }),
    text([fitted(verdictOf(pair), em, beside)], {
      ...label,
      frameAnchor: 'right',
      dx: 1.2 * em,
      fill: pair.distinguishable ? ink.ink : ink.soft,
      fontWeight: pair.distinguishable ? 600 : 400,
    }),
    ...intervalMarks(pair, y, { ink, extent }),
  ];
}

function intervalMarks(
  { difference, lower, upper, distinguishable }: ComparedInterval,
  y: number,
  { ink, extent }: Pick<On, 'ink' | 'extent'>,
): Markish[] {
  if (lower === null || upper === null) return [];
  const { em, line } = ink;
  const x1 = Math.max(lower, extent.low);
  const x2 = Math.min(upper, extent.high);
  const pen = { stroke: ink.ink, strokeWidth: (distinguishable ? 1.7 : 0.9) * line };
  const ends = [
    { x: x1, symbol: lower < x1 ? headLeft : stop },
    { x: x2, symbol: upper > x2 ? headRight : stop },
  ];
  return [
    ruleY([y], { x1, x2, ...pen }),
    ...ends.map(({ x, symbol }) => dot([x], { x: (at: number) => at, y: () => y, symbol, r: 0.26 * em, ...pen })),
    dot([difference], {
      x: (at: number) => at,
      y: () => y,
      r: 0.3 * em,
      fill: distinguishable ? ink.ink : ink.ground,
      stroke: ink.ink,
      strokeWidth: line,
    }),
  ];
}

function nameOf({ first, second }: ComparedInterval): string {
  return `${first} − ${second}`;
}

function verdictOf({ first, second, difference, distinguishable }: ComparedInterval): string {
  if (distinguishable === null) return 'cannot be judged';
  if (!distinguishable) return 'not distinguishable';
  return `${difference > 0 ? first : second} is higher`;
}

function keyOf({ pairs, confidence }: ComparisonIntervals): KeyEntry[] {
  const sure = `${percentWords(confidence)}, all pairs jointly`;
  const entries: readonly (KeyEntry | false)[] = [
    pairs.some((pair) => pair.distinguishable === true) && { symbol: disc, words: `told apart (${sure})` },
    pairs.some((pair) => pair.distinguishable === false) && {
      symbol: disc,
      paint: 'hollow',
      words: 'not distinguishable: the interval holds zero',
    },
    { symbol: 'stroke', words: 'difference that the data allow' },
  ];
  return entries.filter((entry) => entry !== false);
}

function inWords({ quantity, unit, pairs }: ComparisonIntervals): string {
  const told = pairs.map((pair) => {
    const limits =
      pair.lower === null || pair.upper === null
        ? (pair.reason ?? 'too little is known')
        : `${numberWords(pair.lower)} to ${numberWords(pair.upper)} ${unit}`;
    return `${nameOf(pair)}: ${verdictOf(pair)}, ${limits}.`;
  });
  return `Differences in mean ${quantity}. ${told.length === 0 ? 'There is no pair.' : told.join(' ')}`;
}

/** A row for each pair: difference, limits, and what follows. */
export function comparisonIntervalsTable({ unit, pairs }: ComparisonIntervals): FigureTable {
  const suffix = unit.replaceAll('/', '_per_').replaceAll(/[^\w]/g, '');
  return {
    columns: [
      textColumn('first', 'first'),
      textColumn('second', 'second'),
      numberColumn(`difference_${suffix}`, 'difference', unit),
      numberColumn(`lower_${suffix}`, 'lower limit', unit),
      numberColumn(`upper_${suffix}`, 'upper limit', unit),
      textColumn('finding', 'finding'),
    ],
    rows: pairs.map((pair) => [
      pair.first,
      pair.second,
      pair.difference,
      pair.lower,
      pair.upper,
      pair.distinguishable === null ? `cannot be judged: ${pair.reason ?? 'too little is known'}` : verdictOf(pair),
    ]),
  };
}
