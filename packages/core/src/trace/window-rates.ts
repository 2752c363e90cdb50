/** Change per second over windows of time, one after another. */
export interface WindowRate {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  readonly perSecond: number;
}

/** Rates of `values` over windows of at least `width_s` and three samples, on samples [from, to]. Windows with NaN at an end are left out. */
export function windowRates(
  values: Float64Array,
  time_s: Float64Array,
  { from, to, width_s }: { readonly from: number; readonly to: number; readonly width_s: number },
): WindowRate[] {
  const rates: WindowRate[] = [];
  let start = from;
  for (let i = from + 1; i <= to; i++) {
    const seconds = (time_s[i] as number) - (time_s[start] as number);
    if (i - start < 3 || seconds < width_s) continue;
    const change = (values[i] as number) - (values[start] as number);
    if (!Number.isNaN(change)) rates.push({ from: start, to: i, seconds, perSecond: change / seconds });
    start = i;
  }
  return rates;
}
