import { meanBetween } from './mean.ts';

/** A straight line y = mean_y + slope (x - mean_x) with what is left over. */
export interface LineFit {
  readonly slope: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly count: number;
  /** Standard deviation of the residuals. */
  readonly scatter: number;
  /** Standard error of the slope for independent residuals. */
  readonly slopeError: number;
}

/** Running sums about the means of the whole, so that any window is fitted in constant time without loss of digits. */
export interface LineSums {
  readonly originX: number;
  readonly originY: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly xx: Float64Array;
  readonly xy: Float64Array;
  readonly yy: Float64Array;
}

export function lineSums(x: Float64Array, y: Float64Array): LineSums {
  const count = x.length;
  const originX = meanBetween(x, 0, count);
  const originY = meanBetween(y, 0, count);
  const sums = {
    originX,
    originY,
    x: new Float64Array(count + 1),
    y: new Float64Array(count + 1),
    xx: new Float64Array(count + 1),
    xy: new Float64Array(count + 1),
    yy: new Float64Array(count + 1),
  };
  for (let i = 0; i < count; i++) {
    const dx = (x[i] as number) - originX;
    const dy = (y[i] as number) - originY;
    sums.x[i + 1] = (sums.x[i] as number) + dx;
    sums.y[i + 1] = (sums.y[i] as number) + dy;
    sums.xx[i + 1] = (sums.xx[i] as number) + dx * dx;
    sums.xy[i + 1] = (sums.xy[i] as number) + dx * dy;
    sums.yy[i + 1] = (sums.yy[i] as number) + dy * dy;
  }
  return sums;
}

/** Least-squares line through points [from, to); null for fewer than three points or no spread in x. */
export function fitLine(sums: LineSums, from: number, to: number): LineFit | null {
  const count = to - from;
  if (count < 3) return null;
  const over = (values: Float64Array): number => (values[to] as number) - (values[from] as number);
  const mx = over(sums.x) / count;
  const my = over(sums.y) / count;
  const sxx = over(sums.xx) - count * mx * mx;
  const sxy = over(sums.xy) - count * mx * my;
  const syy = over(sums.yy) - count * my * my;
  if (!(sxx > 0)) return null;
  const slope = sxy / sxx;
  const scatter = Math.sqrt(Math.max(0, syy - slope * sxy) / (count - 2));
  return {
    slope,
    meanX: mx + sums.originX,
    meanY: my + sums.originY,
    count,
    scatter,
    slopeError: scatter / Math.sqrt(sxx),
  };
}
