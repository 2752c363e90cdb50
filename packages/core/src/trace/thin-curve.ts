import { extremesOf } from './extremes.ts';

/**
 * Thins a curve for drawing: the record is cut into equal stretches and of each the samples with its lowest and highest y are kept, in order, with
 * the first and last sample of the whole. At most about `points` points come back; every extreme value is among them. NaN samples are left out.
 */
export function thinCurve(
  x: Float64Array,
  y: Float64Array,
  points: number,
): { readonly x: number[]; readonly y: number[] } {
  const count = Math.min(x.length, y.length);
  const kept: number[] = [];
  const keep = (i: number): void => {
    if (i >= 0 && kept.at(-1) !== i && !Number.isNaN(x[i]) && !Number.isNaN(y[i])) kept.push(i);
  };
  const stretches = Math.max(1, Math.floor((points - 2) / 2));
  const size = count <= points ? 1 : Math.max(1, count / stretches);
  if (count > 0) keep(0);
  for (let from = 0; from < count; from += size) {
    const extremes = extremesOf(y, Math.floor(from), Math.min(count, Math.floor(from + size)));
    keep(Math.min(extremes.low, extremes.high));
    keep(Math.max(extremes.low, extremes.high));
  }
  if (count > 0) keep(count - 1);
  return { x: kept.map((i) => x[i] as number), y: kept.map((i) => y[i] as number) };
}
