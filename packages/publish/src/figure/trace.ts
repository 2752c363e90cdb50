import { literal, type Typst } from '../typst/escape.ts';
import { decimals } from '../words/number.ts';
import {
  type AcrossExtents,
  type Axis,
  acrossExtents,
  axisOf,
  greatestOf,
  highestForce,
  isSpike,
  type TracePanel,
} from './panel.ts';
import { canvas, figureWidth, label, mark, polyline, stroke } from './pen.ts';
import type { Point } from './point.ts';
import { position, type Scale, scaleOver } from './scale.ts';

/** A force drawn across all panels, with its word. */
export interface RuleLine {
  readonly kind: 'minimum' | 'proof';
  readonly force_kN: number;
}

const perRow = 5;
const left = 30;
const right = 62;
const gap = 7;
const head = 22;
const plotHeight = 104;
const foot = 25;

/**
 * The curves of a product's pieces side by side on the same two scales: nothing overlaps, so black and white is enough.
 * Across: extension of the links where it was recorded, else table travel, else time, else the number of the sample; each
 * panel says which. The minimum is a full line, the proof force a dashed one, both with their words at the right.
 */
export function traceFigure(panels: readonly TracePanel[], lines: readonly RuleLine[]): Typst {
  const rows = Math.max(1, Math.ceil(panels.length / perRow));
  const rowHeight = head + plotHeight + foot;
  const columns = Math.min(perRow, Math.max(panels.length, 2));
  const width = (figureWidth - left - right - gap * (columns - 1)) / columns;
  const highest = greatestOf([...panels.map(highestForce), ...lines.map((line) => line.force_kN)]);
  const across = acrossExtents(panels);
  const drawing = Array.from({ length: rows }, (_, row) => {
    const top = row * rowHeight + head;
    const force = scaleOver([0, highest], { start: top + plotHeight, end: top, ticks: 5 });
    const inRow = panels.slice(row * perRow, (row + 1) * perRow);
    const end = left + inRow.length * (width + gap) - gap;
    return [
      ...forceAxis(force, end),
      ...lines.flatMap((line) => ruleLine(line, force, end)),
      ...inRow.flatMap((panel, column) => {
        const start = left + column * (width + gap);
        return drawPanel(panel, { force, start, end: start + width, greatest: across });
      }),
    ];
  });
  return canvas({
    width: figureWidth,
    height: rows * rowHeight,
    alternative: inWords(panels, lines),
    drawing: drawing.flat(),
  });
}

function forceAxis(force: Scale, end: number): Typst[] {
  const ticks = force.ticks.flatMap((tick) => {
    const y = position(force, tick);
    return [
      stroke('grid', { x: left, y }, { x: end, y }),
      label({ x: left - 4, y }, decimals(tick, force.places), { across: 1 }),
    ];
  });
  return [...ticks, label({ x: 0, y: force.end - 6 }, 'force, kN', { weight: 'quiet' })];
}

function ruleLine(line: RuleLine, force: Scale, end: number): Typst[] {
  const y = position(force, line.force_kN);
  return [
    stroke(line.kind, { x: left, y }, { x: end + 4, y }),
    label({ x: end + 7, y }, `${line.kind} ${Number(line.force_kN.toPrecision(4))} kN`),
  ];
}

interface Frame {
  readonly force: Scale;
  readonly start: number;
  readonly end: number;
  readonly greatest: AcrossExtents;
}

function drawPanel(panel: TracePanel, frame: Frame): Typst[] {
  const { force, start, end } = frame;
  const words = { value: '', 'at least': 'at least', none: 'not used' }[panel.use];
  const outline = [
    stroke('axis', { x: start, y: force.start }, { x: end, y: force.start }),
    stroke('axis', { x: start, y: force.start }, { x: start, y: force.end }),
    label({ x: start + 2, y: force.end - 15 }, shortName(panel.piece), { weight: 'strong' }),
    ...(words === '' ? [] : [label({ x: start + 2, y: force.end - 6.5 }, words)]),
  ];
  if (panel.curve === null || panel.curve.force_kN.length === 0) {
    const middle = { x: (start + end) / 2, y: (force.start + force.end) / 2 };
    return [...outline, label(middle, 'no recording', { across: 0.5, weight: 'quiet' })];
  }
  const axis = axisOf(panel.curve);
  const across = scaleOver([0, frame.greatest.get(axis.words) ?? 0], { start, end, ticks: 3 });
  return [...outline, ...acrossAxis(axis, across, force), ...drawCurve(panel, { axis, across, force })];
}

/** Pieces of a product differ in the end of their codes: of a long one that is what fits over a panel. */
function shortName(name: string): string {
  const letters = Array.from(name);
  return letters.length <= 17 ? name : `…${letters.slice(-15).join('')}`;
}

function acrossAxis(axis: Axis, across: Scale, force: Scale): Typst[] {
  const ticks = across.ticks.flatMap((tick, index) => {
    const x = position(across, tick);
    const edge = index === 0 ? 0 : index === across.ticks.length - 1 ? 1 : 0.5;
    return [
      stroke('axis', { x, y: force.start }, { x, y: force.start + 2.5 }),
      label({ x, y: force.start + 8 }, decimals(tick, across.places), { across: edge }),
    ];
  });
  const middle = { x: (across.start + across.end) / 2, y: force.start + 17 };
  return [...ticks, label(middle, axis.words, { across: 0.5, weight: 'quiet' })];
}

function drawCurve(
  panel: TracePanel,
  on: { readonly axis: Axis; readonly across: Scale; readonly force: Scale },
): Typst[] {
  const forces = panel.curve?.force_kN ?? [];
  const places = forces.flatMap((force_kN, index) => {
    const value = on.axis.values[index];
    if (value === undefined || value === null || !Number.isFinite(value) || !Number.isFinite(force_kN)) return [];
    const point = { x: position(on.across, Math.max(value, 0)), y: inPlot(position(on.force, force_kN), on.force) };
    return [{ force_kN, point, isSpike: isSpike(panel, index) }];
  });
  const curve = places.filter((place) => !place.isSpike);
  const spikes = places.filter((place) => place.isSpike).map((place) => mark('cross', place.point, 1.9));
  return [
    ...polyline(
      panel.use === 'none' ? 'unused' : 'curve',
      curve.map((place) => place.point),
    ),
    ...spikes,
    ...peak(panel, curve),
  ];
}

/** Noise about zero and rejected samples above the scale stay at the edge of the plot. */
function inPlot(y: number, force: Scale): number {
  return Math.min(Math.max(y, force.end), force.start);
}

interface Place {
  readonly force_kN: number;
  readonly point: Point;
}

/** The maximum stands at the sample whose force is nearest to it. */
function peak(panel: TracePanel, curve: readonly Place[]): Typst[] {
  const target = panel.maximum_kN ?? greatestOf(curve.map((place) => place.force_kN));
  const nearest = curve.reduce<Place | null>(
    (best, place) =>
      best === null || Math.abs(place.force_kN - target) < Math.abs(best.force_kN - target) ? place : best,
    null,
  );
  if (nearest === null) return [];
  const kind = panel.use === 'value' ? 'disc' : panel.use === 'none' ? 'ring' : 'arrow up';
  return [mark(kind, nearest.point, 1.9)];
}

function inWords(panels: readonly TracePanel[], lines: readonly RuleLine[]): string {
  const pieces = panels.map((panel) => panel.piece).join(', ');
  const rules = lines.map((line) => `${line.kind} ${line.force_kN} kN`).join(', ');
  return `Force against extension for ${pieces}${rules === '' ? '' : `, with lines at ${rules}`}.`;
}

/** How to read the figure, for the line below it. */
export const traceKey: Typst = literal(
  'Filled disc: the maximum. Upward arrow: the maximum is only "at least". Ring and broken curve: pull not used. Cross: sample rejected as electrical, left out. Full line across: minimum breaking force. Dashed line: proof force.',
);
