import type { Signal } from './curve-axis.ts';
import type { TraceInk } from './trace-ink.ts';
import { fontOf } from './trace-ink.ts';
import type { RuleLine, TraceMark } from './trace-mark.ts';

/** The drawing area in canvas pixels, and how a value finds its place in it. */
export interface Drawing {
  readonly ctx: CanvasRenderingContext2D;
  readonly box: { readonly left: number; readonly top: number; readonly width: number; readonly height: number };
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly ink: TraceInk;
}

/** The curve as one line, in the order of its samples: it may turn back, as a table does that slips. A hole in the recording stays a hole. */
export function drawCurve(drawing: Drawing, xs: Signal, ys: readonly number[]): void {
  const { ctx, ink } = drawing;
  ctx.save();
  ctx.strokeStyle = ink.ink;
  ctx.lineWidth = 1.6 * ink.ratio;
  ctx.lineJoin = 'round';
  let joined = false;
  ctx.beginPath();
  ys.forEach((force, index) => {
    const at = xs[index];
    if (at === null || at === undefined) joined = false;
    else if (joined) ctx.lineTo(drawing.x(at), drawing.y(force));
    else {
      ctx.moveTo(drawing.x(at), drawing.y(force));
      joined = true;
    }
  });
  ctx.stroke();
  ctx.restore();
}

/** A rule line with its label standing on it, at the left where the curve has not yet risen. */
export function drawRuleLine(drawing: Drawing, line: RuleLine): void {
  const { ctx, box, ink } = drawing;
  const y = Math.round(drawing.y(line.force_kN)) + 0.5;
  ctx.save();
  ctx.strokeStyle = ink.teal;
  ctx.fillStyle = ink.teal;
  ctx.lineWidth = ink.ratio;
  ctx.setLineDash([7 * ink.ratio, 4 * ink.ratio]);
  ctx.beginPath();
  ctx.moveTo(box.left, y);
  ctx.lineTo(box.left + box.width, y);
  ctx.stroke();
  ctx.font = fontOf(ink);
  ctx.textAlign = 'left';
  ctx.textBaseline = 'bottom';
  label(drawing, line.label, { x: box.left + 8 * ink.ratio, y: y - 3 * ink.ratio });
  ctx.restore();
}

export function drawMark(drawing: Drawing, mark: TraceMark): void {
  const at = { x: drawing.x(mark.x), y: drawing.y(mark.force_kN) };
  if (mark.kind === 'spike') drawCross(drawing, at);
  else if (mark.kind === 'event') drawNumber(drawing, at, mark.label);
  else drawNamed(drawing, at, mark);
}

interface Place {
  readonly x: number;
  readonly y: number;
}

function drawCross({ ctx, ink }: Drawing, { x, y }: Place): void {
  const arm = 4 * ink.ratio;
  ctx.save();
  ctx.strokeStyle = ink.brick;
  ctx.lineWidth = 1.5 * ink.ratio;
  ctx.beginPath();
  ctx.moveTo(x - arm, y - arm);
  ctx.lineTo(x + arm, y + arm);
  ctx.moveTo(x + arm, y - arm);
  ctx.lineTo(x - arm, y + arm);
  ctx.stroke();
  ctx.restore();
}

/** A numbered flag below the curve, named in the table of events. */
function drawNumber({ ctx, ink }: Drawing, { x, y }: Place, number: string): void {
  const radius = 9 * ink.ratio;
  const low = y + 26 * ink.ratio;
  ctx.save();
  ctx.strokeStyle = ink.soft;
  ctx.lineWidth = ink.ratio;
  ctx.beginPath();
  ctx.moveTo(x, y + 3 * ink.ratio);
  ctx.lineTo(x, low - radius);
  ctx.stroke();
  ctx.beginPath();
  ctx.arc(x, low, radius, 0, 2 * Math.PI);
  ctx.fillStyle = ink.paper;
  ctx.fill();
  ctx.stroke();
  ctx.fillStyle = ink.ink;
  ctx.font = fontOf(ink, 600);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.fillText(number, x, low + ink.ratio);
  ctx.restore();
}

/** Maximum: filled triangle standing on the peak. Parting: open square at the last force. Both with their words. */
function drawNamed(drawing: Drawing, { x, y }: Place, mark: TraceMark): void {
  const { ctx, ink, box } = drawing;
  const size = 5 * ink.ratio;
  ctx.save();
  ctx.fillStyle = mark.kind === 'maximum' ? ink.ink : ink.paper;
  ctx.strokeStyle = ink.ink;
  ctx.lineWidth = 1.5 * ink.ratio;
  ctx.beginPath();
  if (mark.kind === 'maximum') {
    ctx.moveTo(x, y - 2 * ink.ratio);
    ctx.lineTo(x - size, y - 2 * size);
    ctx.lineTo(x + size, y - 2 * size);
    ctx.closePath();
  } else ctx.rect(x - size * 0.8, y - size * 0.8, size * 1.6, size * 1.6);
  ctx.fill();
  ctx.stroke();
  ctx.font = fontOf(ink, 600);
  ctx.fillStyle = ink.ink;
  const above = mark.kind === 'maximum';
  ctx.textAlign = 'left';
  ctx.textBaseline = above ? 'bottom' : 'top';
  const width = ctx.measureText(mark.label).width;
  const free = box.left + box.width - 6 * ink.ratio;
  const left = above ? Math.min(x - width / 2, free - width) : x - width - 14 * ink.ratio;
  label(drawing, mark.label, { x: Math.max(box.left + 6 * ink.ratio, left), y: above ? y - 3 * size : y + 9 * size });
  ctx.restore();
}

/** Words on a ground of paper, so that lines behind do not cross them out. */
function label({ ctx, ink }: Drawing, words: string, { x, y }: Place): void {
  ctx.save();
  ctx.strokeStyle = ink.paper;
  ctx.lineWidth = 5 * ink.ratio;
  ctx.lineJoin = 'round';
  ctx.setLineDash([]);
  ctx.strokeText(words, x, y);
  ctx.restore();
  ctx.fillText(words, x, y);
}
