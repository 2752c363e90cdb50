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

function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

export function lineSums(x: Float64Array, y: Float64Array): LineSums {
  const originX = meanOf(x);
  const originY = meanOf(y);
  const running = (term: (i: number) => number): Float64Array => {
    const sums = new Float64Array(x.length + 1);
    for (let i = 0; i < x.length; i++) sums[i + 1] = (sums[i] as number) + term(i);
    return sums;
  };
  const dx = (i: number): number => (x[i] as number) - originX;
  const dy = (i: number): number => (y[i] as number) - originY;
  return {
    originX,
    originY,
    x: running(dx),
    y: running(dy),
    xx: running((i) => dx(i) ** 2),
    xy: running((i) => dx(i) * dy(i)),
    yy: running((i) => dy(i) ** 2),
  };
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
