import { fitLine, lineSums } from './line-fit.ts';
import type { RateLimits } from './options.ts';
import { windowRates } from './window-rates.ts';

export interface RateInput {
  readonly time_s: Float64Array | null;
  readonly force_kN: Float64Array;
  readonly table_mm: Float64Array | null;
  /** Loaded stretch in samples: end of slack to parting or end. */
  readonly loaded: { readonly from: number; readonly to: number };
  /** Elastic stretch in samples, or null. */
  readonly elastic: { readonly from: number; readonly to: number } | null;
}

export interface Rates {
  readonly tableSpeed_mm_per_min: number | null;
  readonly forceRate_kN_per_s: number | null;
}

const MOST_POINTS = 20_000;

/** Slope of values over time on [from, to], least squares; null without values, time or spread. */
function slopeOverTime(
  values: Float64Array | null,
  time: Float64Array | null,
  from: number,
  to: number,
): number | null {
  if (!values || !time || to - from < 2) return null;
  const stride = Math.max(1, Math.floor((to - from) / MOST_POINTS));
  const x = new Float64Array(Math.floor((to - from) / stride) + 1);
  const y = new Float64Array(x.length);
  let count = 0;
  for (let i = from; i <= to; i += stride) {
    if (Number.isNaN(values[i])) continue;
    x[count] = time[i] as number;
    y[count++] = values[i] as number;
  }
  return fitLine(lineSums(x.subarray(0, count), y.subarray(0, count)), 0, count)?.slope ?? null;
}

/**
 * Table speed over the loaded stretch and force rate over the elastic stretch: slopes of least-squares lines over time (ISO 6892-1, 10.3
 * names the rates; the line is common practice). Null where a signal or the time is missing.
 */
export function findRates(input: RateInput): Rates {
  const { time_s, force_kN, table_mm, loaded, elastic } = input;
  const speed = slopeOverTime(table_mm, time_s, loaded.from, loaded.to);
  return {
    tableSpeed_mm_per_min: speed === null ? null : speed * 60,
    forceRate_kN_per_s: elastic && slopeOverTime(force_kN, time_s, elastic.from, elastic.to),
  };
}

function secondsInside(
  values: Float64Array,
  time: Float64Array,
  span: { readonly from: number; readonly to: number },
  limits: readonly [number, number],
): { inside: number; whole: number } {
  let inside = 0;
  let whole = 0;
  for (const rate of windowRates(values, time, { ...span, width_s: 1 })) {
    whole += rate.seconds;
    if (rate.perSecond >= limits[0] && rate.perSecond <= limits[1]) inside += rate.seconds;
  }
  return { inside, whole };
}

/**
 * Share of the time within the method's window, judged over windows of a second: the table speed over the whole loaded stretch, the force rate over the elastic
 * stretch (it must fall once the piece flows). With both windows the smaller share counts. Null without a window or the signal it needs.
 */
export function shareInside(input: RateInput, limits: RateLimits | undefined): number | null {
  const { time_s, table_mm, force_kN, loaded, elastic } = input;
  if (!limits || !time_s) return null;
  const shares: number[] = [];
  const speed = limits.tableSpeed_mm_per_min;
  if (speed && table_mm) {
    const { inside, whole } = secondsInside(table_mm, time_s, loaded, [speed[0] / 60, speed[1] / 60]);
    if (whole > 0) shares.push(inside / whole);
  }
  if (limits.forceRate_kN_per_s && elastic) {
    const { inside, whole } = secondsInside(force_kN, time_s, elastic, limits.forceRate_kN_per_s);
    if (whole > 0) shares.push(inside / whole);
  }
  return shares.length === 0 ? null : Math.min(...shares);
}
