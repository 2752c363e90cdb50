/** The summary of a handful of values: nothing is inferred, only counted and averaged. */
export interface Summary {
  readonly n: number;
  readonly mean: number | null;
  /** Sample standard deviation (n - 1); null below two values, because one value has no scatter. */
  readonly sd: number | null;
  /** sd / mean in per cent. */
  readonly cov_pct: number | null;
  readonly least: number | null;
  readonly greatest: number | null;
}

/**
 * Mean, standard deviation and range of `values` (any unit, all the same).
 * Two passes about the mean, so that large offsets cost no digits (NIST StRD NumAcc sets).
 * Values that are not finite are the caller's fault and throw a RangeError.
 */
export function summarise(values: readonly number[]): Summary {
  const n = values.length;
  if (values.some((value) => !Number.isFinite(value))) throw new RangeError('summarise takes finite numbers only');
  if (n === 0) return { n, mean: null, sd: null, cov_pct: null, least: null, greatest: null };
  const mean = centredMean(values);
  const sd = n < 2 ? null : Math.sqrt(sumOfSquares(values, mean) / (n - 1));
  return {
    n,
    mean,
    sd,
    cov_pct: sd === null || mean === 0 ? null : (100 * sd) / Math.abs(mean),
    least: Math.min(...values),
    greatest: Math.max(...values),
  };
}

/** The mean of the deviations from a first guess corrects that guess to the last digit. */
function centredMean(values: readonly number[]): number {
  const guess = values.reduce((sum, value) => sum + value, 0) / values.length;
  return guess + values.reduce((sum, value) => sum + (value - guess), 0) / values.length;
}

/** The second term removes what rounding of the mean leaves behind (corrected two-pass, Chan, Golub, LeVeque 1983). */
function sumOfSquares(values: readonly number[], mean: number): number {
  let squares = 0;
  let remainder = 0;
  for (const value of values) {
    squares += (value - mean) ** 2;
    remainder += value - mean;
  }
  return squares - remainder ** 2 / values.length;
}
