import { dot, type Markish, rect, ruleX, ruleY, text } from '@observablehq/plot';
import { summarise } from '@provinghouse/core';
import { acrossAxis } from './sheet/axis.ts';
import type { KeyEntry } from './sheet/key.ts';
import { asWritten, numberWords, percentWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { arrowRight, bracket, disc, headLeft, upright } from './sheet/symbol.ts';
import { fitted, strongWidth } from './sheet/text-width.ts';

/** What the pull of a piece is good for: a value, a value the true one is not below, or nothing. */
export type DotUse = 'value' | 'at least' | 'left out';

export interface PieceDot {
  readonly piece: string;
  readonly force_kN: number;
  readonly use: DotUse;
  readonly expandedUncertainty_kN: number | null;
}

/** With the stated confidence this share of all pieces of the product lies above the bound. */
export interface ToleranceMark {
  readonly bound: number;
  readonly coverage: number;
  readonly confidence: number;
}

export interface ProductDots {
  readonly product: string;
  readonly pieces: readonly PieceDot[];
  readonly minimum_kN: number | null;
  /** Where guarded acceptance begins; null without a guard band. */
  readonly acceptedFrom_kN: number | null;
  readonly tolerance: ToleranceMark | null;
}

export interface BreakingForceDots {
  readonly products: readonly ProductDots[];
}

/** Mean of the values; those that are only "at least" and those left out are in no mean. */
export function meanForce(product: ProductDots): number | null {
  return summarise(product.pieces.flatMap((piece) => (piece.use === 'value' ? [piece.force_kN] : []))).mean;
}

/**
 * Products under each other on one scale of force: each piece a mark with its expanded uncertainty, nothing hidden behind a
 * mean. Values are discs, "at least" values arrows, pulls left out rings. Minimum, guard band above it and, where given, the
 * one-sided tolerance bound.
 */
export function breakingForceDots(data: BreakingForceDots, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const { products } = data;
  const names = Math.min(Math.max(0, ...products.map(({ product }) => strongWidth(product, em))), setting.width * 0.28);
  const rowHeight = 4 * em;
  const domain = extentOf(products);
  return sheet(
    {
      label: dotsInWords(data),
      key: keyOf(products, ink),
      height: Math.max(products.length, 1) * rowHeight + 3.6 * em,
      margin: { left: names + 1.4 * em, right: 8.6 * em, bottom: 3.6 * em },
      plot: {
        x: { domain, label: null },
        y: { domain: [Math.max(products.length, 1), 0], axis: null },
        marks: [
          ...acrossAxis({ label: 'breaking force, kN' }, ink),
          ruleY(
            products.map((_, row) => row + 1),
            { stroke: ink.hair, strokeWidth: 0.5 * ink.line },
          ),
          ...products.flatMap((product, row) => rowMarks(product, { top: row, ink, left: names, from_kN: domain[0] })),
        ],
      },
    },
    setting,
  );
}

interface Row {
  readonly top: number;
  readonly ink: Ink;
  readonly left: number;
  /** Where the scale begins. */
  readonly from_kN: number;
}

function rowMarks(product: ProductDots, { top, ink, left, from_kN }: Row): Markish[] {
  const middle = top + 0.5;
  const { em, line } = ink;
  const span = { y1: top + 0.08, y2: top + 0.92 };
  const mean = meanForce(product);
  return [
    ...guardBand(product, top, ink),
    ...(product.minimum_kN === null
      ? []
      : [ruleX([product.minimum_kN], { ...span, stroke: ink.accent, strokeWidth: 1.6 * line })]),
    ...(mean === null
      ? []
      : [
          ruleX([mean], {
            y1: top + 0.14,
            y2: top + 0.86,
            stroke: ink.soft,
            strokeWidth: line,
            strokeDasharray: dashOf(em),
          }),
        ]),
    ...toleranceMarks(product.tolerance, middle, { ink, from_kN }),
    ...product.pieces.flatMap((piece, index) => pieceMarks(piece, middle + lane(index, product.pieces.length), ink)),
    text([fitted(product.product, em, left)], {
      frameAnchor: 'left',
      y: () => middle,
      dx: -left - 1.4 * em,
      textAnchor: 'start',
      text: (words: string) => words,
      fontWeight: 600,
      fill: ink.ink,
    }),
    ...besideRow(product, middle, ink),
  ];
}

/** From the minimum to where guarded acceptance begins: a value here is inconclusive. */
function guardBand({ minimum_kN, acceptedFrom_kN }: ProductDots, top: number, ink: Ink): Markish[] {
  if (minimum_kN === null || acceptedFrom_kN === null || acceptedFrom_kN <= minimum_kN) return [];
  const band = { x1: minimum_kN, x2: acceptedFrom_kN, y1: top + 0.08, y2: top + 0.92 };
  return [
    rect([band], {
      x1: 'x1',
      x2: 'x2',
      y1: 'y1',
      y2: 'y2',
      fill: ink.band,
      stroke: ink.soft,
      strokeWidth: 0.4 * ink.line,
    }),
  ];
}

/** A bracket that opens upwards in force; at the edge an arrow when the bound lies beyond it. */
function toleranceMarks(
  tolerance: ToleranceMark | null,
  middle: number,
  { ink, from_kN }: { readonly ink: Ink; readonly from_kN: number },
): Markish[] {
  if (tolerance === null) return [];
  const isCut = tolerance.bound < from_kN;
  const mark = {
    x: (bound: number) => Math.max(bound, from_kN),
    y: () => middle,
    symbol: isCut ? headLeft : bracket,
    r: (isCut ? 0.4 : 0.52) * ink.em,
    stroke: ink.ink,
    strokeWidth: 1.4 * ink.line,
  };
  return [dot([tolerance.bound], mark)];
}

/** Pieces keep their order down the row, so that equal values stay apart. */
function lane(index: number, count: number): number {
  return count < 2 ? 0 : (index / (count - 1) - 0.5) * Math.min(0.62, 0.18 * (count - 1));
}

function pieceMarks(piece: PieceDot, y: number, ink: Ink): Markish[] {
  const { em, line } = ink;
  const place = { x: (one: PieceDot) => one.force_kN, y: () => y };
  const spread = piece.expandedUncertainty_kN ?? 0;
  const whisker = ruleY([piece], {
    y: () => y,
    x1: piece.force_kN - spread,
    // Upwards of an "at least" value nothing is known: the arrow says so.
    x2: piece.force_kN + (piece.use === 'at least' ? 0 : spread),
    stroke: ink.soft,
    strokeWidth: 0.7 * line,
  });
  const shaft = dot([piece], { ...place, symbol: arrowRight, r: 0.27 * em, stroke: ink.ink, strokeWidth: line });
  const isHollow = piece.use === 'left out';
  return [
    ...(spread > 0 ? [whisker] : []),
    ...(piece.use === 'at least' ? [shaft] : []),
    dot([piece], {
      ...place,
      r: (piece.use === 'at least' ? 0.2 : 0.29) * em,
      fill: isHollow ? ink.ground : ink.ink,
      stroke: isHollow ? ink.soft : ink.ground,
      strokeWidth: (isHollow ? 1 : 0.5) * line,
    }),
  ];
}

/** The numbers the row is held against, beside it. */
function besideRow(product: ProductDots, middle: number, ink: Ink): Markish[] {
  const lines = [
    ...(product.minimum_kN === null ? [] : [`minimum ${asWritten(product.minimum_kN)}`]),
    ...(product.tolerance === null ? [] : [`bound ${numberWords(product.tolerance.bound)}`]),
  ];
  const place = {
    frameAnchor: 'right',
    y: () => middle,
    dx: 1.2 * ink.em,
    textAnchor: 'start',
    lineHeight: 1.15,
  } as const;
  return lines.length === 0
    ? []
    : [text([lines.join('\n')], { ...place, text: (words: string) => words, fill: ink.soft })];
}

function dashOf(em: number): string {
  return `${0.3 * em} ${0.22 * em}`;
}

function keyOf(products: readonly ProductDots[], ink: Ink): KeyEntry[] {
  const uses = new Set(products.flatMap((product) => product.pieces.map((piece) => piece.use)));
  const hasSpread = products.some((product) => product.pieces.some((piece) => (piece.expandedUncertainty_kN ?? 0) > 0));
  const entries: readonly (KeyEntry | false)[] = [
    uses.has('value') && { symbol: disc, words: hasSpread ? 'value, with its U' : 'value' },
    uses.has('at least') && { symbol: arrowRight, paint: 'line', words: 'at least this much' },
    uses.has('left out') && { symbol: disc, paint: 'hollow', words: 'left out' },
    products.some((product) => meanForce(product) !== null) && {
      symbol: upright,
      dash: dashOf(ink.em),
      words: 'mean of the values',
    },
    products.some((product) => product.minimum_kN !== null) && {
      symbol: upright,
      paint: 'accent',
      weight: 1.6,
      words: 'minimum',
    },
    products.some((product) => (product.acceptedFrom_kN ?? 0) > (product.minimum_kN ?? 0)) && {
      symbol: 'band',
      words: 'guard band: inconclusive',
    },
    ...toleranceKeys(products),
  ];
  return entries.filter((entry) => entry !== false);
}

function toleranceKeys(products: readonly ProductDots[]): KeyEntry[] {
  const meanings = new Set(
    products.flatMap(({ tolerance }) =>
      tolerance === null
        ? []
        : [`${percentWords(tolerance.coverage)} of pieces lie above, ${percentWords(tolerance.confidence)} sure`],
    ),
  );
  return [...meanings].map((words) => ({ symbol: bracket, paint: 'line', words, weight: 1.4 }));
}

/** All that is drawn, with a little room; 0 to 1 when there is nothing. A bound far below the pieces does not stretch it. */
function extentOf(products: readonly ProductDots[]): [number, number] {
  const forces = products.flatMap((product) => [
    ...product.pieces.flatMap(({ force_kN, expandedUncertainty_kN }) => [
      force_kN - (expandedUncertainty_kN ?? 0),
      force_kN + (expandedUncertainty_kN ?? 0),
    ]),
    ...[product.minimum_kN, product.acceptedFrom_kN].filter((value) => value !== null),
  ]);
  const bounds = products.flatMap(({ tolerance }) => tolerance?.bound ?? []);
  if (forces.length === 0) return [0, 1];
  const greatest = Math.max(...forces, ...bounds);
  const nearest = Math.min(...forces);
  const reach = nearest - 0.8 * Math.max(greatest - nearest, 0.05 * greatest);
  const least = Math.min(nearest, ...bounds.filter((bound) => bound >= reach));
  const room = Math.max(0.05 * (greatest - least), 0.01 * greatest, 0.01);
  return [least - room, greatest + room];
}

function dotsInWords({ products }: BreakingForceDots): string {
  const rows = products.map((product) => {
    const dots = product.pieces.map(
      ({ force_kN, use }) => `${numberWords(force_kN, 4)}${use === 'value' ? '' : ` (${use})`}`,
    );
    const minimum = product.minimum_kN === null ? '' : `, minimum ${asWritten(product.minimum_kN)} kN`;
    return `${product.product}: ${dots.length === 0 ? 'no forces' : `${dots.join(', ')} kN`}${minimum}.`;
  });
  return `Breaking force of each piece. ${rows.join(' ')}`;
}
