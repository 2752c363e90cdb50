import { barX, type Markish, ruleX, text } from '@observablehq/plot';
import type { MeasuredValue } from '@provinghouse/core';
import { acrossAxis } from './sheet/axis.ts';
import { asWritten, numberWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';
import { fitted, textWidth } from './sheet/text-width.ts';

export interface BudgetPart {
  readonly name: string;
  /** Standard uncertainty it brings to the result, in the unit of the result. */
  readonly contribution: number;
  /** Of the variance of the result; null where correlation mixes the parts. */
  readonly share_pct: number | null;
  readonly source: string;
}

/** What the bars need of an uncertainty budget; a budget of core serves as it is. */
export interface BudgetBars {
  readonly quantity: string;
  readonly unit: string;
  readonly lines: readonly BudgetPart[];
  readonly combinedStandardUncertainty: number | null;
  readonly coverageFactor: number | null;
  readonly expandedUncertainty: number | null;
  /** Parts that nobody knows: they keep the uncertainty from being stated. */
  readonly unknown: readonly string[];
}

/** The budget a measured value carries; null when it carries no parts. */
export function budgetOfMeasured(quantity: string, measured: MeasuredValue): BudgetBars | null {
  const { contributions, expandedUncertainty, coverageFactor, unit } = measured;
  if (contributions.length === 0) return null;
  const combined = expandedUncertainty === null ? null : expandedUncertainty / coverageFactor;
  return {
    quantity,
    unit,
    lines: contributions.map(({ name, standardUncertainty, source }) => ({
      name,
      contribution: standardUncertainty,
      share_pct: combined === null || combined === 0 ? null : 100 * (standardUncertainty / combined) ** 2,
      source,
    })),
    combinedStandardUncertainty: combined,
    coverageFactor,
    expandedUncertainty,
    unknown: [],
  };
}

interface Bar {
  readonly name: string;
  readonly length: number | null;
  readonly words: string;
  readonly isSum: boolean;
}

/**
 * The parts of an uncertainty, the largest first, each with its share of the variance, and below them what they come to.
 * Standard uncertainties add by their squares: a bar half as long weighs a quarter. A part nobody knows has words and no bar.
 */
export function budgetBars(data: BudgetBars, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const bars = barsOf(data);
  const names = Math.min(Math.max(0, ...bars.map(({ name }) => textWidth(name, em))), 0.42 * setting.width);
  const beside = Math.max(...bars.map(({ words }) => textWidth(words, em)), 0) + 0.8 * em;
  const longest = Math.max(0, ...bars.map((bar) => bar.length ?? 0));
  return sheet(
    {
      label: inWords(data, bars),
      key: [],
      height: Math.max(bars.length, 1) * 1.9 * em + 3.6 * em,
      margin: { left: names + 1.2 * em, right: beside, bottom: 3.6 * em },
      plot: {
        x: { domain: [0, longest > 0 ? longest : 1] },
        y: { type: 'band', domain: bars.map((_, index) => index), axis: null, padding: 0.32 },
        marks: [
          ...acrossAxis({ label: `standard uncertainty of the ${data.quantity}, ${data.unit}`, ticks: 5 }, ink),
          ...bars.flatMap((bar, index) => barMarks(bar, index, { ink, names })),
          ruleX([0], { stroke: ink.ink, strokeWidth: ink.line }),
        ],
      },
    },
    setting,
  );
}

function barsOf(data: BudgetBars): Bar[] {
  const { combinedStandardUncertainty: combined, expandedUncertainty, coverageFactor, unit } = data;
  const parts = data.lines
    .toSorted((a, b) => b.contribution - a.contribution)
    .map(
      (part, index): Bar => ({
        name: part.name,
        length: part.contribution,
        words: [
          numberWords(part.contribution, 2),
          ...(part.share_pct === null ? [] : [shareWords(part.share_pct, index === 0)]),
        ].join(', '),
        isSum: false,
      }),
    );
  const unknown = data.unknown.map((name): Bar => ({ name, length: null, words: 'not known', isSum: false }));
  const expanded =
    expandedUncertainty === null || coverageFactor === null
      ? ''
      : `, U = ${numberWords(expandedUncertainty, 2)} ${unit} (k = ${asWritten(Number(coverageFactor.toFixed(2)))})`;
  const sum = combined === null ? 'not stated' : `${numberWords(combined, 2)}${expanded}`;
  return [...parts, ...unknown, { name: 'together', length: combined, words: sum, isSum: true }];
}

/** The first says of what. */
function shareWords(share_pct: number, isFirst: boolean): string {
  return `${share_pct < 0.5 ? 'below 1' : share_pct.toFixed(0)} %${isFirst ? ' of the variance' : ''}`;
}

function barMarks(bar: Bar, row: number, { ink, names }: { readonly ink: Ink; readonly names: number }): Markish[] {
  const { em } = ink;
  const paint = bar.isSum
    ? { fill: ink.ground, stroke: ink.ink, strokeWidth: 1.2 * ink.line, fillOpacity: 1 }
    : { fill: ink.accent };
  const weight = bar.isSum ? 600 : 400;
  const label = { y: () => row, textAnchor: 'start', text: (words: string) => words, fontWeight: weight } as const;
  return [
    ...(bar.length === null ? [] : [barX([bar.length], { x: (length: number) => length, y: () => row, ...paint })]),
    text([fitted(bar.name, em, names)], { ...label, frameAnchor: 'left', dx: -names - 1.2 * em, fill: ink.ink }),
    text([bar.words], { ...label, x: () => bar.length ?? 0, dx: 0.5 * em, fill: ink.soft }),
  ];
}

function inWords(data: BudgetBars, bars: readonly Bar[]): string {
  const parts = bars.map((bar) => `${bar.name}: ${bar.words}`).join('; ');
  return `What the uncertainty of the ${data.quantity} is made of, in ${data.unit}. ${parts}.`;
}

/** The budget, a row for each part, then for each that nobody knows, then what they come to. */
export function budgetBarsTable(data: BudgetBars): FigureTable {
  const parts = data.lines.toSorted((a, b) => b.contribution - a.contribution);
  const suffix = data.unit.replaceAll('/', '_per_').replaceAll(/[^\w]/g, '');
  return {
    columns: [
      textColumn('part', 'part'),
      numberColumn(`standard_uncertainty_${suffix}`, 'standard uncertainty', data.unit, { digits: 2, of: 'each' }),
      numberColumn('share_of_variance_pct', 'share of the variance', '%', { digits: 2, of: 'each' }),
      textColumn('source', 'source'),
    ],
    rows: [
      ...parts.map((part) => [part.name, part.contribution, part.share_pct, part.source]),
      ...data.unknown.map((name) => [name, null, null, 'not known']),
      ['together', data.combinedStandardUncertainty, null, 'root of the sum of squares'],
    ],
  };
}
