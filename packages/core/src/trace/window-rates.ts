/** Change per second over windows of time, one after another. */
export interface WindowRate {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  readonly perSecond: number;
}

/** The first sample three or more after `start` and `width_s` later; past `to` when there is none. */
function windowEnd(time_s: Float64Array, start: number, to: number, width_s: number): number {
  const startTime = time_s[start] as number;
  let i = start + 3;
  while (i <= to && (time_s[i] as number) - startTime < width_s) i++;
  return i;
}

/** Rates of `values` over windows of at least `width_s` and three samples, on samples [from, to]. Windows with NaN at an end are left out. */
export function windowRates(
  values: Float64Array,
  time_s: Float64Array,
  { from, to, width_s }: { readonly from: number; readonly to: number; readonly width_s: number },
): WindowRate[] {
  const rates: WindowRate[] = [];
  let start = from;
  for (let i = windowEnd(time_s, start, to, width_s); i <= to; i = windowEnd(time_s, i, to, width_s)) {
    const seconds = (time_s[i] as number) - (time_s[start] as number);
    const change = (values[i] as number) - (values[start] as number);
    if (!Number.isNaN(change)) rates.push({ from: start, to: i, seconds, perSecond: change / seconds });
    start = i;
  }
  return rates;
}
