import { areaY, dot, line, type Markish, ruleX, ruleY, text } from '@observablehq/plot';
import type { ChainLength, LongChainFinding, PulledPiece } from '@provinghouse/core';
import { reachDashes, reachMarks } from './long-chain-reach.ts';
import { governingStretches, reachStretches } from './long-chain-stretch.ts';
import { apart } from './sheet/apart.ts';
import { acrossAxis, upAxis } from './sheet/axis.ts';
import type { KeyEntry } from './sheet/key.ts';
import { asWritten, numberWords, percentWords, tickWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { arrowUp, modeShape } from './sheet/symbol.ts';
import { strongWidth } from './sheet/text-width.ts';

/** A long-chain finding, the pieces it stands on, and the minimum asked of a piece. */
export interface LongChainCurve {
  readonly product: string;
  readonly finding: LongChainFinding;
  readonly pieces: readonly PulledPiece[];
  readonly minimum_kN: number | null;
}

interface Series {
  readonly words: string;
  readonly weight: number;
  readonly force: (chain: ChainLength) => number | null;
}

/**
 * Force against length of chain, from one link to 500 m: the middle chain with its 90 % band, and what 95 % and 99 % of chains
 * hold, as estimate and as bound. Solid where the pieces carry it, dashed beyond the longest piece, dotted where the shape is
 * assumed, with the words below. Along the top the mode that governs.
 */
export function longChainCurve(data: LongChainCurve, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const { curve } = data.finding;
  const series = seriesOf(data);
  const height = 30 * em;
  const top = 2.2 * em;
  const bottom = 5.2 * em;
  const extent = extentOf(data);
  const beside = Math.max(
    0,
    ...series.map(({ words }) => strongWidth(words, em)),
    strongWidth('minimum of a piece', em),
  );
  return sheet(
    {
      label: inWords(data),
      key: keyOf(data),
      height,
      margin: { left: 3.8 * em, right: beside + 1.8 * em, top, bottom },
      plot: {
        x: { type: 'log', domain: lengthsOf(data), label: null },
        y: { domain: [extent.low, extent.high], label: null },
        marks: [
          band(curve, ink),
          ...acrossAxis({ label: 'length of chain, m', ticks: lengthTicks(lengthsOf(data)), words: lengthWords }, ink),
          ...upAxis({ label: 'breaking force, kN', words: tickWords }, ink, 3.4 * em),
          ...minimumMarks(data, ink),
          ...governingMarks(data, ink),
          ...series.flatMap((one) => seriesMarks(one, data, ink)),
          ...pieceMarks(data, ink),
          ...endWords(series, data, { ink, extent, plotHeight: height - top - bottom }),
          ...reachMarks(data, ink, setting.width - 3.8 * em - beside - 1.8 * em),
        ],
      },
    },
    setting,
  );
}

function seriesOf({ finding }: LongChainCurve): Series[] {
  const exceeded = finding.curve[0]?.exceeded ?? [];
  const sure = percentWords(finding.inputs.confidence);
  const estimates = exceeded.map(
    ({ survival }, k): Series => ({
      words: `${percentWords(survival)} hold more (estimate)`,
      weight: 0.8,
      force: (chain) => chain.exceeded[k]?.estimate_kN ?? null,
    }),
  );
  const bounds = exceeded.map(
    ({ survival }, k): Series => ({
      words: `${percentWords(survival)} hold more, ${sure} sure`,
      weight: 2,
      force: (chain) => chain.exceeded[k]?.bound_kN ?? null,
    }),
  );
  return [
    { words: 'half hold more', weight: 1.3, force: (chain: ChainLength) => chain.median_kN },
    ...estimates,
    ...bounds,
  ].filter(({ force }) => finding.curve.some((chain) => force(chain) !== null));
}

function seriesMarks({ force, weight }: Series, { finding, pieces }: LongChainCurve, ink: Ink): Markish[] {
  return reachStretches({ finding, pieces }).map(({ reach, curve }) => {
    const dash = reachDashes[reach](ink.em);
    return line(curve, {
      x: 'length_m',
      y: force,
      stroke: weight > 1.5 ? ink.accent : ink.ink,
      strokeWidth: weight * ink.line,
      strokeLinecap: 'butt',
      ...(dash === null ? {} : { strokeDasharray: dash }),
    });
  });
}

function band(curve: readonly ChainLength[], ink: Ink): Markish {
  const known = curve.filter((chain) => chain.medianInterval90_kN !== null);
  return areaY(known, {
    x: 'length_m',
    y1: (chain: ChainLength) => chain.medianInterval90_kN?.low,
    y2: (chain: ChainLength) => chain.medianInterval90_kN?.high,
    fill: ink.band,
  });
}

function minimumMarks({ minimum_kN }: LongChainCurve, ink: Ink): Markish[] {
  return minimum_kN === null ? [] : [ruleY([minimum_kN], { stroke: ink.ink, strokeWidth: 1.6 * ink.line })];
}

/** Where the governing mode changes, an upright; above, which governs where. */
function governingMarks({ finding }: LongChainCurve, ink: Ink): Markish[] {
  const stretches = governingStretches(finding.curve);
  const words = (mode: string, isNarrow: boolean) => (mode === 'any' || isNarrow ? mode : `${mode} governs`);
  const labels = stretches.map(({ mode, from_m, to_m }) => ({
    length_m: Math.sqrt(from_m * to_m),
    words: words(mode, Math.log10(to_m / from_m) < 1.1),
  }));
  return [
    ruleX(
      stretches.slice(1).map(({ from_m }) => from_m),
      {
        stroke: ink.soft,
        strokeWidth: ink.line,
        strokeDasharray: `${0.9 * ink.em} ${0.25 * ink.em} ${0.15 * ink.em} ${0.25 * ink.em}`,
      },
    ),
    text(labels, {
      x: 'length_m',
      frameAnchor: 'top',
      dy: -1.1 * ink.em,
      text: 'words',
      fontWeight: 600,
      fill: ink.ink,
    }),
  ];
}

/** Pieces of one length stand side by side about it, that none hides another. */
function pieceMarks({ pieces, finding }: LongChainCurve, ink: Ink): Markish[] {
  const placed = pieces
    .toSorted((a, b) => a.links - b.links || a.force_kN - b.force_kN)
    .map((piece, index) => ({
      ...piece,
      length_m: ((piece.links * finding.inputs.pitch_mm) / 1000) * 10 ** beside(index),
    }));
  const place = { x: 'length_m', y: 'force_kN' } as const;
  const paint = { fill: ink.ink, stroke: ink.ground, strokeWidth: 0.5 * ink.line };
  const atLeast = placed.filter((piece) => piece.isAtLeast);
  const broken = Map.groupBy(
    placed.filter((piece) => !piece.isAtLeast),
    (piece) => piece.mode ?? 'any',
  );
  return [
    dot(atLeast, { ...place, symbol: arrowUp, r: 0.24 * ink.em, stroke: ink.ink, strokeWidth: ink.line }),
    dot(atLeast, { ...place, r: 0.2 * ink.em, fill: ink.ink }),
    ...[...broken].map(([mode, ones]) => dot(ones, { ...place, symbol: modeShape(mode), r: 0.3 * ink.em, ...paint })),
  ];
}

/** In decades of length. */
function beside(index: number): number {
  return 0.045 * (((index * 2) % 5) - 2);
}

/** Each line is named at its end, the names kept apart. */
function endWords(
  series: readonly Series[],
  { finding, minimum_kN }: LongChainCurve,
  { ink, extent, plotHeight }: { readonly ink: Ink; readonly extent: Extent; readonly plotHeight: number },
): Markish[] {
  const last = finding.curve.at(-1);
  const ends = [
    ...series.flatMap(({ words, weight, force }) => {
      const force_kN = last === undefined ? null : force(last);
      return force_kN === null ? [] : [{ words, force_kN, isStrong: weight > 1.5 }];
    }),
    ...(minimum_kN === null ? [] : [{ words: 'minimum of a piece', force_kN: minimum_kN, isStrong: false }]),
  ];
  const scale = plotHeight / (extent.high - extent.low);
  const wished = ends.map(({ force_kN }) => (extent.high - force_kN) * scale);
  const placed = apart(wished, { gap: 1.25 * ink.em, from: 0, to: plotHeight });
  return ends.map(({ words, isStrong }, index) =>
    text([words], {
      frameAnchor: 'top-right',
      dx: 0.7 * ink.em,
      dy: placed[index] ?? 0,
      textAnchor: 'start',
      lineAnchor: 'middle',
      text: (said: string) => said,
      fontWeight: isStrong ? 600 : 400,
      fill: isStrong ? ink.accent : ink.ink,
    }),
  );
}

interface Extent {
  readonly low: number;
  readonly high: number;
}

function extentOf({ finding, pieces, minimum_kN }: LongChainCurve): Extent {
  const forces = [
    ...finding.curve.flatMap((chain) => [
      chain.medianInterval90_kN?.high ?? chain.median_kN,
      ...chain.exceeded.map((one) => one.bound_kN),
    ]),
    ...pieces.map((piece) => piece.force_kN),
    minimum_kN,
  ].filter((force) => force !== null);
  return { low: 0, high: forces.length === 0 ? 1 : 1.05 * Math.max(...forces) };
}

/** A whole number of links makes a length that is round only nearly. */
function lengthWords(length_m: number): string {
  return tickWords(Number(length_m.toPrecision(2)));
}

/** One link, the decades, and the end. */
function lengthTicks([from, to]: readonly [number, number]): number[] {
  return [from, ...[0.1, 1, 10, 100].filter((tick) => tick > 1.8 * from && tick < 0.6 * to), to];
}

function lengthsOf({ finding }: LongChainCurve): [number, number] {
  const { curve, inputs } = finding;
  return [curve[0]?.length_m ?? inputs.pitch_mm / 1000, curve.at(-1)?.length_m ?? 500];
}

function keyOf({ pieces, finding }: LongChainCurve): KeyEntry[] {
  const broken = pieces.filter((piece) => !piece.isAtLeast);
  const modes = [...new Set(broken.map((piece) => piece.mode ?? 'any'))];
  const entries: readonly (KeyEntry | false)[] = [
    ...modes.map((mode) => ({
      symbol: modeShape(mode),
      words: mode === 'any' ? 'piece, break not read' : `piece, break ${mode.startsWith('beside') ? '' : 'in '}${mode}`,
    })),
    pieces.some((piece) => piece.isAtLeast) && { symbol: arrowUp, paint: 'line', words: 'piece, at least this much' },
    finding.curve.some((chain) => chain.medianInterval90_kN !== null) && {
      symbol: 'band',
      words: 'half hold more: 90 % band',
    },
    finding.unseen.length > 0 && {
      symbol: 'stroke',
      paint: 'accent',
      weight: 2,
      words: `bound, allowing for breaks not seen: ${finding.unseen.map(({ mode }) => mode).join(', ')}`,
    },
  ];
  return entries.filter((entry) => entry !== false);
}

function inWords({ product, finding, minimum_kN }: LongChainCurve): string {
  const last = finding.curve.at(-1);
  const exceeded = last?.exceeded[0];
  if (last === undefined || exceeded === undefined)
    return `Force against length of ${product}: nothing can be said of any length.`;
  const minimum = minimum_kN === null ? '' : ` The minimum of a piece is ${asWritten(minimum_kN)} kN.`;
  const governs = governingStretches(finding.curve).map(
    ({ mode, from_m }) => `${mode} from ${numberWords(from_m, 2)} m`,
  );
  const bound = `${percentWords(exceeded.survival)} of ${numberWords(last.length_m)} m chains hold more than ${numberWords(exceeded.bound_kN)} kN, ${percentWords(finding.inputs.confidence)} sure.`;
  return `Force against length of ${product}. ${bound}${minimum}${governs.length === 0 ? '' : ` Governing: ${governs.join(', ')}.`}`;
}
