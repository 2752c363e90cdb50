import 'uplot/dist/uPlot.min.css';
import './trace-host.css';
import uPlot from 'uplot';
import { type Extent, extentOf, type Signal } from './curve-axis.ts';
import { type Drawing, drawCurve, drawMark, drawRuleLine } from './trace-drawing.ts';
import { fontOf, readInk } from './trace-ink.ts';
import type { RuleLine, TraceMark } from './trace-mark.ts';

/** All that one figure shows. */
export interface TraceScene {
  readonly xs: Signal;
  readonly forces: readonly number[];
  readonly xLabel: string;
  readonly forceLabel: string;
  readonly lines: readonly RuleLine[];
  readonly marks: readonly TraceMark[];
}

export interface TracePlot {
  /** Keeps the middle and shows `factor` of the range: below 1 zooms in. */
  zoom(factor: number): void;
  /** Moves by a share of the range shown, right for positive. */
  move(share: number): void;
  whole(): void;
  destroy(): void;
}

interface PlotHooks {
  /** Told of the sample nearest to the pointer; null when it leaves. */
  readonly onPoint: (index: number | null) => void;
}

/**
 * Draws a trace into `host`. Axes, scales and dragging are uPlot's; the curve itself is drawn here, because uPlot wants a rising x and
 * a table that slips, or an extension with noise, turns back.
 */
export function plotTrace(host: HTMLElement, scene: TraceScene, hooks: PlotHooks): TracePlot {
  const full = fullExtent(scene);
  const plot = new uPlot(
    plotOptions(host, scene, { full, hooks }),
    [
      [full.x.min, full.x.max],
      [null, null],
    ],
    host,
  );
  const resize = new ResizeObserver(() => plot.setSize(sizeOf(host)));
  resize.observe(host);
  return {
    zoom: (factor) => show(plot, { x: scaled(plot, 'x', factor), y: scaled(plot, 'y', factor) }),
    move: (share) => show(plot, { x: moved(plot, share) }),
    whole: () => show(plot, full),
    destroy: () => {
      resize.disconnect();
      plot.destroy();
    },
  };
}

interface Window {
  readonly x: Extent;
  readonly y?: Extent;
}

function show(plot: uPlot, { x, y }: Window): void {
  plot.batch(() => {
    plot.setScale('x', x);
    if (y) plot.setScale('y', y);
  });
}

function rangeOf(plot: uPlot, key: string): Extent {
  const scale = plot.scales[key];
  return { min: scale?.min ?? 0, max: scale?.max ?? 1 };
}

function scaled(plot: uPlot, key: string, factor: number): Extent {
  const { min, max } = rangeOf(plot, key);
  const half = ((max - min) / 2) * factor;
  const middle = (max + min) / 2;
  return { min: middle - half, max: middle + half };
}

function moved(plot: uPlot, share: number): Extent {
  const { min, max } = rangeOf(plot, 'x');
  const by = (max - min) * share;
  return { min: min + by, max: max + by };
}

/** The whole curve with its rule lines, and room above for the words at the maximum. */
function fullExtent(scene: TraceScene): Required<Window> {
  const heights = [...scene.lines.map((line) => line.force_kN), ...scene.marks.map((mark) => mark.force_kN), 0];
  const forces = extentOf([extentOf(scene.forces, 0).min, extentOf(scene.forces, 0).max, ...heights], 0);
  return { x: extentOf(scene.xs, 0.02), y: { min: Math.min(0, forces.min), max: forces.max * 1.12 } };
}

function sizeOf(host: HTMLElement): { width: number; height: number } {
  const width = Math.max(280, host.clientWidth);
  return { width, height: Math.round(Math.min(Math.max(300, width * 0.5), window.innerHeight * 0.62)) };
}

interface PlotAround {
  readonly full: Required<Window>;
  readonly hooks: PlotHooks;
}

function plotOptions(host: HTMLElement, scene: TraceScene, { full, hooks }: PlotAround): uPlot.Options {
  const ink = readInk(host);
  const axis = (label: string, size: number): uPlot.Axis => ({
    label,
    size,
    labelSize: ink.fontSize * 1.9,
    stroke: () => readInk(host).soft,
    font: fontOf({ ...ink, ratio: 1 }),
    labelFont: fontOf({ ...ink, ratio: 1 }),
    grid: { stroke: () => readInk(host).hair, width: 1 },
    ticks: { stroke: () => readInk(host).strong, width: 1, size: 6 },
    gap: 5,
  });
  return {
    ...sizeOf(host),
    legend: { show: false },
    padding: [8, 4, 0, 0],
    scales: { x: { time: false, range: () => [full.x.min, full.x.max] }, y: { range: () => [full.y.min, full.y.max] } },
    series: [{}, { show: true }],
    axes: [axis(scene.xLabel, ink.fontSize * 2.3), axis(scene.forceLabel, ink.fontSize * 3.4)],
    cursor: { drag: { x: true, y: true, uni: 24, setScale: true }, points: { show: false } },
    hooks: {
      draw: [(plot) => drawScene(plot, host, scene)],
      setCursor: [(plot) => hooks.onPoint(pointed(plot, scene))],
    },
  };
}

function drawScene(plot: uPlot, host: HTMLElement, scene: TraceScene): void {
  const { ctx, bbox } = plot;
  const drawing: Drawing = {
    ctx,
    box: bbox,
    x: (value) => plot.valToPos(value, 'x', true),
    y: (value) => plot.valToPos(value, 'y', true),
    ink: readInk(host),
  };
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  drawCurve(drawing, scene.xs, scene.forces);
  for (const line of scene.lines) drawRuleLine(drawing, line);
  for (const mark of scene.marks) drawMark(drawing, mark);
  ctx.restore();
}

/** The sample nearest to the pointer on the screen, which is what the eye takes for the nearest. */
function pointed(plot: uPlot, scene: TraceScene): number | null {
  const { left, top } = plot.cursor;
  if (left === undefined || top === undefined || left < 0) return null;
  let nearest: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  scene.xs.forEach((x, index) => {
    if (x === null) return;
    const across = plot.valToPos(x, 'x') - left;
    const down = (plot.valToPos(scene.forces[index] ?? 0, 'y') - top) * 0.25;
    const distance = across * across + down * down;
    if (distance >= least) return;
    least = distance;
    nearest = index;
  });
  return nearest;
}
