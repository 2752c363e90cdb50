/** Where the lowest and the highest of samples [from, to) stand, the first of equals; -1 where all are NaN or there is none. */
export function extremesOf(y: Float64Array, from: number, to: number): { readonly low: number; readonly high: number } {
  let low = -1;
  let high = -1;
  for (let i = from; i < to; i++) {
    const value = y[i] as number;
    if (Number.isNaN(value)) continue;
    if (low < 0 || value < (y[low] as number)) low = i;
    if (high < 0 || value > (y[high] as number)) high = i;
  }
  return { low, high };
}
