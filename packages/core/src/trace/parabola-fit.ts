/** A least-squares parabola over evenly spaced samples, with its top inside the window. */
export interface ParabolaTop {
  readonly value: number;
  /** Sample number of the top; need not be whole. */
  readonly at: number;
  /** Standard error of the value for noise of the given size. */
  readonly error: number;
  /** Residuals beyond noise: chi-square per degree of freedom of block means; about 1 for a good fit. */
  readonly misfit: number;
}

function polynomial(
  values: Float64Array,
  from: number,
  to: number,
): { readonly a: number; readonly b: number; readonly c: number } {
  const count = to - from + 1;
  const half = (count - 1) / 2;
  let s2 = 0;
  let s4 = 0;
  let y0 = 0;
  let y1 = 0;
  let y2 = 0;
  for (let i = 0; i < count; i++) {
    const x = (i - half) / half;
    const y = values[from + i] as number;
    s2 += x * x;
    s4 += x ** 4;
    y0 += y;
    y1 += x * y;
    y2 += x * x * y;
  }
  const c = (count * y2 - s2 * y0) / (count * s4 - s2 * s2);
  return { a: (y0 - c * s2) / count, b: y1 / s2, c };
}

function misfitOf(residual: (i: number) => number, count: number, noise: number): number {
  const blocks = Math.min(8, Math.floor(count / 2));
  if (blocks < 4) return 1;
  let sum = 0;
  for (let k = 0; k < blocks; k++) {
    const start = Math.floor((k * count) / blocks);
    const end = Math.floor(((k + 1) * count) / blocks);
    let total = 0;
    for (let i = start; i < end; i++) total += residual(i);
    sum += total ** 2 / (end - start);
  }
  return sum / (noise * noise) / (blocks - 3);
}

/**
 * Fits y = a + b x + c x^2 to samples [from, to] (x from -1 to 1) and finds its top inside the window: local polynomial smoothing, A. Savitzky and
 * M. J. E. Golay, Anal. Chem. 36 (1964) 1627. Needs five samples; null for fewer.
 */
export function parabolaTop(values: Float64Array, from: number, to: number, noise: number): ParabolaTop | null {
  const count = to - from + 1;
  if (count < 5) return null;
  const half = (count - 1) / 2;
  const { a, b, c } = polynomial(values, from, to);
  const at = (x: number): number => a + b * x + c * x * x;
  const inside = c < 0 ? Math.max(-1, Math.min(1, -b / (2 * c))) : b > 0 ? 1 : -1;
  const top = c >= 0 && at(-1) > at(1) ? -1 : inside;
  // Over many even samples the Legendre polynomials are orthogonal: the variance at x is (P0^2 + 3 P1^2 + 5 P2^2) sigma^2 / n.
  const legendre2 = (3 * top * top - 1) / 2;
  const error = noise * Math.sqrt((1 + 3 * top * top + 5 * legendre2 ** 2) / count);
  const residual = (i: number): number => (values[from + i] as number) - at((i - half) / half);
  return { value: at(top), at: from + half + top * half, error, misfit: misfitOf(residual, count, noise) };
}
