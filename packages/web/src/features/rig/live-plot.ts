import type { Forecast, RuleLine } from '@provinghouse/core';
import uPlot from 'uplot';
import { text } from '../../lib/text.ts';
import { brokenAtGaps, type CurveGap } from './curve-gaps.ts';

/** What the live figure shows at one moment. */
export interface LiveScene {
  readonly times_s: readonly number[];
  readonly forces_kN: readonly number[];
  readonly ruleLines: readonly RuleLine[];
  readonly forecast: Forecast | null;
  readonly marks: readonly { readonly time_s: number }[];
  readonly gaps: readonly CurveGap[];
}

export interface LivePlot {
  show(scene: LiveScene): void;
  destroy(): void;
}

const nothing: LiveScene = { times_s: [], forces_kN: [], ruleLines: [], forecast: null, marks: [], gaps: [] };

/** Seconds the axis shows at least. */
const shortest_s = 20;

/** Draws the growing curve into `host`; colours and type come from the style sheet. */
export function plotLive(host: HTMLElement): LivePlot {
  let scene = nothing;
  const plot = new uPlot(
    optionsOf(host, () => scene),
    [[], []],
    host,
  );
  const resize = new ResizeObserver(() => plot.setSize(sizeOf(host)));
  resize.observe(host);
  return {
    show: (next) => {
      scene = next;
      const curve = brokenAtGaps(next.times_s, next.forces_kN, next.gaps);
      plot.setData([[...curve.times_s], [...curve.forces_kN]]);
    },
    destroy: () => {
      resize.disconnect();
      plot.destroy();
    },
  };
}

function sizeOf(host: HTMLElement): { width: number; height: number } {
  return { width: Math.max(240, host.clientWidth), height: Math.max(160, host.clientHeight) };
}

/** Room for the pull so far and for the time to the maximum. */
function timeRange({ times_s, forecast }: LiveScene): [number, number] {
  const now_s = times_s.at(-1) ?? 0;
  const ahead_s = Math.min(forecast?.timeToMaximum_s ?? 0, Math.max(now_s, shortest_s));
  return [0, Math.max(shortest_s, 1.12 * now_s, 1.05 * (now_s + ahead_s))];
}

/** Room for the curve, the rule lines and the forecast. */
function forceRange({ forces_kN, ruleLines, forecast }: LiveScene): [number, number] {
  const lines = ruleLines.map((line) => line.force_kN);
  const greatest = forces_kN.reduce((most, force) => Math.max(most, force), 0);
  const least = forces_kN.reduce((most, force) => Math.min(most, force), 0);
  return [least, 1.12 * Math.max(1, greatest, forecast?.upper90_kN ?? 0, ...lines)];
}

function optionsOf(host: HTMLElement, scene: () => LiveScene): uPlot.Options {
  const axis = (label: string, size: number): uPlot.Axis => ({
    label,
    size: size * typeSize(host),
    labelSize: 1.7 * typeSize(host),
    stroke: () => colour(host, '--ink-soft'),
    font: `${typeSize(host)}px ${family(host)}`,
    labelFont: `${typeSize(host)}px ${family(host)}`,
    grid: { stroke: () => colour(host, '--hair'), width: 1 },
    ticks: { stroke: () => colour(host, '--hair-strong'), width: 1, size: 6 },
  });
  return {
    ...sizeOf(host),
    legend: { show: false },
    cursor: { show: false },
    padding: [8, 8, 0, 0],
    scales: { x: { time: false, range: () => timeRange(scene()) }, y: { range: () => forceRange(scene()) } },
    series: [{}, { stroke: () => colour(host, '--ink'), width: 2.5, points: { show: false } }],
    axes: [axis(text.rig.curve.time, 2.2), axis(text.rig.curve.force, 3.2)],
    hooks: { drawAxes: [(plot) => drawUnder(plot, host, scene())] },
  };
}

function colour(host: HTMLElement, name: string): string {
  return getComputedStyle(host).getPropertyValue(name).trim();
}

function typeSize(host: HTMLElement): number {
  return Number.parseFloat(getComputedStyle(host).fontSize) * 0.9;
}

function family(host: HTMLElement): string {
  return getComputedStyle(host).fontFamily;
}

/** Band of the forecast, rule lines with their names, marks: below the curve. */
function drawUnder(plot: uPlot, host: HTMLElement, scene: LiveScene): void {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  for (const gap of scene.gaps) drawGap(plot, host, gap);
  drawForecast(plot, host, scene);
  for (const line of scene.ruleLines) drawRule(plot, host, line);
  for (const mark of scene.marks) drawMark(plot, host, mark.time_s);
  ctx.restore();
}

function drawForecast(plot: uPlot, host: HTMLElement, { forecast, times_s }: LiveScene): void {
  if (!forecast) return;
  const { ctx, bbox } = plot;
  const from = plot.valToPos(times_s.at(-1) ?? 0, 'x', true);
  const top = plot.valToPos(forecast.upper90_kN, 'y', true);
  const bottom = plot.valToPos(forecast.lower90_kN, 'y', true);
  const middle = plot.valToPos(forecast.maximum_kN, 'y', true);
  const right = bbox.left + bbox.width;
  ctx.fillStyle = colour(host, '--teal-wash');
  ctx.fillRect(from, top, right - from, bottom - top);
  ctx.strokeStyle = colour(host, '--teal');
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.beginPath();
  ctx.moveTo(from, middle);
  ctx.lineTo(right, middle);
  ctx.stroke();
}

function drawRule(plot: uPlot, host: HTMLElement, { name, force_kN }: RuleLine): void {
  const { ctx, bbox } = plot;
  const y = plot.valToPos(force_kN, 'y', true);
  ctx.save();
  ctx.strokeStyle = colour(host, '--teal');
  ctx.fillStyle = colour(host, '--teal');
  ctx.lineWidth = 1.5 * devicePixelRatio;
  ctx.setLineDash([7 * devicePixelRatio, 4 * devicePixelRatio]);
  ctx.beginPath();
  ctx.moveTo(bbox.left, y);
  ctx.lineTo(bbox.left + bbox.width, y);
  ctx.stroke();
  ctx.font = `${typeSize(host) * devicePixelRatio}px ${family(host)}`;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'bottom';
  ctx.fillText(`${name} ${force_kN}\u00a0kN`, bbox.left + 8 * devicePixelRatio, y - 3 * devicePixelRatio);
  ctx.restore();
}

/** A gap is a band from top to bottom with its word, as wide as it is long. */
function drawGap(plot: uPlot, host: HTMLElement, { from_s, to_s }: CurveGap): void {
  const { ctx, bbox } = plot;
  const from = plot.valToPos(from_s, 'x', true);
  const width = Math.max(2 * devicePixelRatio, plot.valToPos(to_s, 'x', true) - from);
  ctx.fillStyle = colour(host, '--hair');
  ctx.globalAlpha = 0.5;
  ctx.fillRect(from, bbox.top, width, bbox.height);
  ctx.globalAlpha = 1;
  ctx.fillStyle = colour(host, '--ink-soft');
  ctx.font = `${typeSize(host) * devicePixelRatio}px ${family(host)}`;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'top';
  ctx.fillText(text.rig.curve.gap, from + 4 * devicePixelRatio, bbox.top + 3 * devicePixelRatio);
}

function drawMark(plot: uPlot, host: HTMLElement, time_s: number): void {
  const { ctx, bbox } = plot;
  const x = plot.valToPos(time_s, 'x', true);
  ctx.strokeStyle = colour(host, '--amber');
  ctx.lineWidth = 1.5 * devicePixelRatio;
  ctx.beginPath();
  ctx.moveTo(x, bbox.top);
  ctx.lineTo(x, bbox.top + bbox.height);
  ctx.stroke();
}
