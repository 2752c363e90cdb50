import { areaX, dot, line, type Markish, ruleY, text } from '@observablehq/plot';
import type { LongChainFinding, PlottedLine, WeibullPlot } from '@provinghouse/core';
import { acrossAxis, upAxis } from './sheet/axis.ts';
import { numberWords, tickWords } from './sheet/number-words.ts';
import { type FigureSetting, type Ink, inkOf } from './sheet/setting.ts';
import { sheet } from './sheet/sheet.ts';
import { modeShape } from './sheet/symbol.ts';
import { type FigureTable, numberColumn, textColumn } from './sheet/table.ts';

/** What the plot needs of a long-chain finding, and whose it is. */
export interface WeibullFigure {
  readonly product: string;
  readonly finding: Pick<LongChainFinding, 'plots' | 'inputs'>;
}

/** Shares of single links broken that the axis names. */
const shares = [0.9, 0.5, 0.1, 0.01, 1e-3, 1e-4, 1e-5, 1e-6] as const;

/** Lengths whose middle chain the plot points out. */
const lengths_m = [1, 10, 100] as const;

/**
 * Weibull probability plot by one link, a panel for each break mode on shared scales: the breaks, the fitted law with its
 * 90 % band, and, thin and grey, the laws of the other modes. The law is solid where breaks lie and dashed beyond them.
 * Dotted across: at which share of single links half of the chains of a length have parted.
 */
export function weibullFigure(data: WeibullFigure, setting: FigureSetting): SVGSVGElement {
  const ink = inkOf(setting);
  const { em } = ink;
  const { plots, inputs } = data.finding;
  const frame = frameOf(plots);
  const ticks = shares.map(hazardOf).filter((hazard) => hazard >= frame.least && hazard <= frame.greatest);
  const levels = lengths_m
    .map((length_m) => ({ length_m, hazard: (Math.LN2 * inputs.pitch_mm) / (1000 * length_m) }))
    .filter(({ hazard }) => hazard > frame.least);
  return sheet(
    {
      label: inWords(data),
      key: [],
      height: 28 * em,
      margin: { left: 4.6 * em, right: 10.2 * em, top: 1.4 * em, bottom: 3.6 * em },
      plot: {
        x: { type: 'log', domain: [frame.from_kN, frame.to_kN], label: null },
        y: { type: 'log', domain: [frame.least, frame.greatest], label: null },
        fx: { domain: plots.map((plot) => plot.mode), axis: null, padding: 0.06 },
        marks: [
          ...plots.map((plot) => bandOf(plot, { ink, frame })),
          ...acrossAxis({ label: 'force, kN', ticks: forceTicks(frame, plots.length) }, ink),
          ...upAxis(
            { label: 'single links broken, %', ticks, words: (hazard) => tickWords(100 * (1 - Math.exp(-hazard))) },
            ink,
            4 * em,
          ),
          ruleY(levels, {
            y: 'hazard',
            stroke: ink.soft,
            strokeWidth: 0.7 * ink.line,
            strokeDasharray: `${0.12 * em} ${0.3 * em}`,
          }),
          text(levels, {
            fx: () => plots.at(-1)?.mode,
            y: 'hazard',
            frameAnchor: 'right',
            dx: 0.5 * em,
            textAnchor: 'start',
            text: ({ length_m }: { length_m: number }) => `half of ${length_m} m chains`,
            fill: ink.soft,
          }),
          ...plots.flatMap((plot) => panelMarks(plot, plots, { ink, frame })),
        ],
      },
    },
    setting,
  );
}

interface PlotFrame {
  readonly from_kN: number;
  readonly to_kN: number;
  readonly least: number;
  readonly greatest: number;
}

/** All laws and breaks; a band may run out at the sides, lest one break flatten the rest. */
function frameOf(plots: readonly WeibullPlot[]): PlotFrame {
  const lines = plots.flatMap((plot) => plot.line);
  const breaks = plots.flatMap((plot) => plot.breaks.map((one) => one.force_kN));
  const forces = [...lines.map((point) => point.force_kN), ...breaks];
  if (forces.length === 0) return { from_kN: 1, to_kN: 10, least: 1e-4, greatest: 2 };
  const from = Math.min(...forces);
  return {
    from_kN: Math.max(
      (plots.length > 1 ? 0.7 : 0.8) * from,
      Math.min(0.96 * from, ...lines.map((point) => point.low_kN)),
    ),
    to_kN: 1.06 * Math.max(...forces),
    least: Math.min(...lines.map((point) => point.hazardOfOneLink)),
    greatest: 2,
  };
}

function hazardOf(share: number): number {
  return -Math.log1p(-share);
}

/** Round forces for a logarithmic axis of less than two decades. */
function forceTicks({ from_kN, to_kN }: PlotFrame, panels: number): number[] {
  const steps = panels > 2 ? [1, 2, 4] : [1, 1.5, 2, 3, 4, 5, 6, 8];
  const decades = Array.from({ length: 12 }, (_, k) => 10 ** (k - 4));
  return decades
    .flatMap((decade) => steps.map((step) => Number((step * decade).toPrecision(6))))
    .filter((tick) => tick >= from_kN && tick <= to_kN);
}

interface Panel {
  readonly ink: Ink;
  readonly frame: PlotFrame;
}

function bandOf(plot: WeibullPlot, { ink, frame }: Panel): Markish {
  const inside = (force_kN: number) => Math.min(Math.max(force_kN, frame.from_kN), frame.to_kN);
  return areaX(bandPoints(plot.line, frame), {
    fx: () => plot.mode,
    y: 'hazardOfOneLink',
    x1: (point: PlottedLine) => inside(point.low_kN),
    x2: (point: PlottedLine) => inside(point.high_kN),
    fill: ink.band,
  });
}

function panelMarks(plot: WeibullPlot, plots: readonly WeibullPlot[], { ink, frame }: Panel): Markish[] {
  const { em } = ink;
  const inside = (force_kN: number) => Math.min(Math.max(force_kN, frame.from_kN), frame.to_kN);
  const fx = () => plot.mode;
  const place = { fx, x: (point: PlottedLine) => inside(point.force_kN), y: 'hazardOfOneLink' } as const;
  const others = plots.filter((other) => other.mode !== plot.mode);
  const pen = { stroke: ink.ink, strokeWidth: 1.3 * ink.line } as const;
  return [
    ...others.map((other) => line(other.line, { ...place, stroke: ink.soft, strokeWidth: 0.6 * ink.line })),
    line(plot.line, { ...place, ...pen, strokeDasharray: `${0.5 * em} ${0.35 * em}` }),
    line(within(plot), { ...place, ...pen }),
    dot(plot.breaks, {
      fx,
      x: 'force_kN',
      y: 'hazardOfOneLink',
      symbol: modeShape(plot.mode),
      r: 0.3 * em,
      fill: ink.ink,
      stroke: ink.ground,
      strokeWidth: 0.5 * ink.line,
    }),
    text([titleOf(plot)], {
      fx,
      frameAnchor: 'top-left',
      dy: -1.1 * em,
      textAnchor: 'start',
      text: (words: string) => words,
      fontWeight: 600,
      fill: ink.ink,
    }),
    ...others.map((other, index) => ghostName(other, { fx, ink, inside, own: plot, step: 4 + 4 * index })),
  ];
}

/** The name of another mode's law on its side away from the law of the panel, each a step higher than the one before. */
function ghostName(
  other: WeibullPlot,
  on: {
    readonly fx: () => string;
    readonly ink: Ink;
    readonly inside: (force_kN: number) => number;
    readonly own: WeibullPlot;
    readonly step: number;
  },
): Markish {
  const { fx, ink, inside, own, step } = on;
  const at = other.line[step];
  const isLeft = (at?.force_kN ?? 0) < (own.line[step]?.force_kN ?? 0);
  return text(at === undefined ? [] : [at], {
    fx,
    x: (point: PlottedLine) => inside(point.force_kN),
    y: 'hazardOfOneLink',
    text: () => other.mode,
    dx: (isLeft ? -0.5 : 0.5) * ink.em,
    dy: (isLeft ? -0.4 : 0.4) * ink.em,
    textAnchor: isLeft ? 'end' : 'start',
    fill: ink.soft,
    stroke: ink.ground,
    strokeWidth: 0.25 * ink.em,
  });
}

function titleOf({ mode, breaks }: WeibullPlot): string {
  const name = mode === 'any' ? 'any break' : mode;
  return `${name}: ${breaks.length} ${breaks.length === 1 ? 'break' : 'breaks'}`;
}

/** The law where breaks lie; nothing with fewer than two. */
function within({ line: law, breaks }: WeibullPlot): PlottedLine[] {
  if (breaks.length < 2) return [];
  const hazards = breaks.map((one) => one.hazardOfOneLink);
  const [low, high] = [Math.min(...hazards), Math.max(...hazards)];
  const inner = law.filter((point) => point.hazardOfOneLink > low && point.hazardOfOneLink < high);
  return [...pointAt(law, low), ...inner, ...pointAt(law, high)];
}

/** The points of the band and those at which it runs out of the frame, so that its edge is cut and not bent. */
function bandPoints(law: readonly PlottedLine[], { from_kN, to_kN }: PlotFrame): PlottedLine[] {
  return law.flatMap((point, index) => {
    const before = law[index - 1];
    if (before === undefined) return [point];
    const crossings = [
      crossing([before.low_kN, point.low_kN], from_kN),
      crossing([before.high_kN, point.high_kN], to_kN),
    ].filter((share) => share !== null);
    return [...crossings.sort((a, b) => a - b).map((share) => between(before, point, share)), point];
  });
}

/** Share of the way, in logarithms, at which a force passes `edge`; null when it does not. */
function crossing([from, to]: readonly [number, number], edge: number): number | null {
  if (from < edge === to < edge) return null;
  return Math.log(edge / from) / Math.log(to / from);
}

/** Between two points the law is straight in logarithms. */
function pointAt(law: readonly PlottedLine[], hazard: number): PlottedLine[] {
  const after = law.findIndex((point) => point.hazardOfOneLink >= hazard);
  const [a, b] = [law[after - 1], law[after]];
  if (a === undefined || b === undefined) return [];
  const share = Math.log(hazard / a.hazardOfOneLink) / Math.log(b.hazardOfOneLink / a.hazardOfOneLink);
  return [between(a, b, share)];
}

function between(a: PlottedLine, b: PlottedLine, share: number): PlottedLine {
  const mixed = (from: number, to: number) => from * (to / from) ** share;
  return {
    hazardOfOneLink: mixed(a.hazardOfOneLink, b.hazardOfOneLink),
    force_kN: mixed(a.force_kN, b.force_kN),
    low_kN: mixed(a.low_kN, b.low_kN),
    high_kN: mixed(a.high_kN, b.high_kN),
  };
}

function inWords({ product, finding }: WeibullFigure): string {
  const modes = finding.plots.map((plot) => {
    const forces = plot.breaks.map((one) => numberWords(one.force_kN)).join(', ');
    return `${titleOf(plot)}${forces === '' ? '' : ` at ${forces} kN`}`;
  });
  const said = modes.length === 0 ? 'Nothing broke, so nothing is drawn' : modes.join('; ');
  return `Weibull plot of ${product} by one link. ${said}.`;
}

/** The points drawn, mode by mode: each break, then the fitted law with its band. */
export function weibullFigureTable({ finding }: WeibullFigure): FigureTable {
  return {
    columns: [
      textColumn('mode', 'mode'),
      textColumn('kind', 'what'),
      numberColumn('force_kN', 'force', 'kN'),
      numberColumn('links_broken_pct', 'single links broken', '%', { digits: 2, of: 'each' }),
      numberColumn('low_kN', 'band from', 'kN'),
      numberColumn('high_kN', 'band to', 'kN'),
    ],
    rows: finding.plots.flatMap((plot) => [
      ...plot.breaks.map((one) => [plot.mode, 'break', one.force_kN, broken(one.hazardOfOneLink), null, null]),
      ...plot.line.map((at) => [plot.mode, 'law', at.force_kN, broken(at.hazardOfOneLink), at.low_kN, at.high_kN]),
    ]),
  };
}

function broken(hazard: number): number {
  return -100 * Math.expm1(-hazard);
}
