import type { PullCurve } from '@provinghouse/contract';
import { literal, type Typst } from '../typst/escape.ts';
import { decimals } from '../words/number.ts';
import { canvas, figureWidth, label, mark, polyline, stroke } from './pen.ts';
import type { Point } from './point.ts';
import { position, type Scale, scaleOver } from './scale.ts';

/** One piece in the figure. */
export interface TracePanel {
  readonly piece: string;
  readonly curve: PullCurve | null;
  readonly use: 'value' | 'at least' | 'none';
}

/** A force drawn across all panels, with its word. */
export interface RuleLine {
  readonly kind: 'minimum' | 'proof';
  readonly force_kN: number;
}

interface Axis {
  readonly values: readonly (number | null)[];
  readonly words: string;
}

const perRow = 5;
const left = 30;
const right = 62;
const gap = 7;
const head = 14;
const plotHeight = 104;
const foot = 30;

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
  const forces = panels.flatMap((panel) => panel.curve?.force_kN ?? []);
  const extent = { forces: [0, ...forces, ...lines.map((line) => line.force_kN)], across: acrossExtents(panels) };
  const drawing = Array.from({ length: rows }, (_, row) => {
    const top = row * rowHeight + head;
    const force = scaleOver(extent.forces, { start: top + plotHeight, end: top, ticks: 5 });
    const inRow = panels.slice(row * perRow, (row + 1) * perRow);
    const end = left + inRow.length * (width + gap) - gap;
    return [
      ...forceAxis(force, end),
      ...lines.flatMap((line) => ruleLine(line, force, end)),
      ...inRow.flatMap((panel, column) => {
        const start = left + column * (width + gap);
        return drawPanel(panel, { force, start, end: start + width, greatest: extent.across });
      }),
    ];
  });
  return canvas({ width: figureWidth, height: rows * rowHeight, alternative: inWords(panels, lines), drawing: drawing.flat() });
}

function axisOf(curve: PullCurve): Axis {
  if (curve.extension_mm !== null) return { values: curve.extension_mm, words: 'extension, mm' };
  if (curve.table_mm !== null) return { values: curve.table_mm, words: 'table travel, mm' };
  if (curve.time_s !== null) return { values: curve.time_s, words: 'time, s' };
  return { values: curve.force_kN.map((_, index) => index + 1), words: 'number of sample' };
}

type AcrossExtents = ReadonlyMap<string, readonly number[]>;

function acrossExtents(panels: readonly TracePanel[]): AcrossExtents {
  const axes = panels.flatMap((panel) => (panel.curve === null ? [] : [axisOf(panel.curve)]));
  const byWords = Map.groupBy(axes, (axis) => axis.words);
  return new Map([...byWords].map(([words, group]) => [words, [0, ...group.flatMap((axis) => axis.values.filter((value) => value !== null))]]));
}

function forceAxis(force: Scale, end: number): Typst[] {
  const ticks = force.ticks.flatMap((tick) => {
    const y = position(force, tick);
    return [
      stroke('grid', { x: left, y }, { x: end, y }),
      label({ x: left - 4, y }, decimals(tick, force.places), { across: 1 }),
    ];
  });
  return [...ticks, label({ x: 0, y: force.end - 9 }, 'force, kN', { weight: 'quiet' })];
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
  const words = panel.use === 'none' ? ' (not used)' : panel.use === 'at least' ? ' (at least)' : '';
  const outline = [
    stroke('axis', { x: start, y: force.start }, { x: end, y: force.start }),
    stroke('axis', { x: start, y: force.start }, { x: start, y: force.end }),
    label({ x: start + 2, y: force.end - 8 }, panel.piece + words, { weight: 'strong' }),
  ];
  if (panel.curve === null || panel.curve.force_kN.length === 0) {
    const middle = { x: (start + end) / 2, y: (force.start + force.end) / 2 };
    return [...outline, label(middle, 'no recording', { across: 0.5, weight: 'quiet' })];
  }
  const axis = axisOf(panel.curve);
  const across = scaleOver(frame.greatest.get(axis.words) ?? [0], { start, end, ticks: 3 });
  return [...outline, ...acrossAxis(axis, across, force), ...drawCurve(panel, { axis, across, force })];
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

function drawCurve(panel: TracePanel, on: { readonly axis: Axis; readonly across: Scale; readonly force: Scale }): Typst[] {
  const forces = panel.curve?.force_kN ?? [];
  const points: Point[] = forces.flatMap((force_kN, index) => {
    const value = on.axis.values[index];
    if (value === undefined || value === null || !Number.isFinite(value) || !Number.isFinite(force_kN)) return [];
    return [{ x: position(on.across, value), y: position(on.force, force_kN) }];
  });
  const highest = points.reduce<Point | null>((best, point) => (best === null || point.y < best.y ? point : best), null);
  const drawn = polyline(panel.use === 'none' ? 'unused' : 'curve', points);
  if (highest === null) return drawn;
  const kind = panel.use === 'value' ? 'disc' : panel.use === 'none' ? 'ring' : 'arrow up';
  return [...drawn, mark(kind, highest, 1.9)];
}

function inWords(panels: readonly TracePanel[], lines: readonly RuleLine[]): string {
  const pieces = panels.map((panel) => panel.piece).join(', ');
  const rules = lines.map((line) => `${line.kind} ${line.force_kN} kN`).join(', ');
  return `Force against extension for ${pieces}${rules === '' ? '' : `, with lines at ${rules}`}.`;
}

/** How to read the figure, for the line below it. */
export const traceKey: Typst = literal(
  'Filled disc: the maximum. Upward arrow: the maximum is only "at least". Ring and broken curve: pull not used. Full line across: minimum breaking force. Dashed line: proof force.',
);
