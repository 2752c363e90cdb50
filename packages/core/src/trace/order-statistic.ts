/** The k-th smallest of `values` (0-based), rearranging them in place. Hoare's quickselect (Comm. ACM 4, 1961, algorithm 65). */
function select(values: Float64Array, k: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1] as number;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i <= j) {
        const held = values[i] as number;
        values[i++] = values[j] as number;
        values[j--] = held;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k] as number;
}

/** As `quantileOf`, but rearranges the values: for arrays made only to be ranked. */
export function rearrangedQuantile(values: Float64Array, share: number): number {
  if (values.length === 0) return Number.NaN;
  return select(values, Math.min(values.length - 1, Math.floor(share * values.length)));
}

/** The quantile at `share` (0 to 1) as the nearest order statistic; NaN for no values. The input is left as it is. */
export function quantileOf(values: Float64Array, share: number): number {
  return rearrangedQuantile(values.slice(), share);
}

/** The median (the upper of two middle values); NaN for no values. */
export function medianOf(values: Float64Array): number {
  return quantileOf(values, 0.5);
}

const MOST_FOR_MEDIAN = 10_000;

/** The median of values [from, to), taken evenly from them when they are more than ten thousand; NaN for none. */
export function medianBetween(values: Float64Array, from: number, to: number): number {
  const stride = Math.max(1, Math.floor((to - from) / MOST_FOR_MEDIAN));
  const taken = new Float64Array(Math.max(0, Math.ceil((to - from) / stride)));
  for (let k = 0; k < taken.length; k++) taken[k] = values[from + k * stride] as number;
  return rearrangedQuantile(taken, 0.5);
}
