import { type RiseQuantiles, riseQuantiles } from './forecast-quantiles.ts';
import type { WatchMemory } from './memory.ts';

/** Quantiles of the maximum, settled over the last moments. */
export interface Expected {
  low_kN: number;
  middle_kN: number;
  high_kN: number;
  /** How long there have been any. */
  for_s: number;
}

/** The quantiles settle over this time, so that a step of the features is no jump on the screen; at first they are a plain mean. */
const SETTLES_S = 1.5;

/** Takes the features of one more block into the settled quantiles. */
export function settle(memory: WatchMemory, features: readonly number[], dt_s: number): void {
  const { expected, zero_kN, envelope_kN } = memory;
  const { low, middle, high } = riseQuantiles(memory.axis, features);
  const force = (rise: number): number => zero_kN + (envelope_kN - zero_kN) * Math.exp(rise);
  if (expected === null) {
    memory.expected = { low_kN: force(low), middle_kN: force(middle), high_kN: force(high), for_s: dt_s };
    return;
  }
  expected.for_s += dt_s;
  const share = expected.for_s > 0 ? Math.min(1, dt_s / Math.min(SETTLES_S, expected.for_s)) : 1;
  expected.low_kN += share * (force(low) - expected.low_kN);
  expected.middle_kN += share * (force(middle) - expected.middle_kN);
  expected.high_kN += share * (force(high) - expected.high_kN);
}

/** The settled quantiles as rises over the greatest force so far; null while there are none. */
export function settledQuantiles(memory: WatchMemory): RiseQuantiles | null {
  const { expected, zero_kN, envelope_kN } = memory;
  if (expected === null) return null;
  const rise = (force_kN: number): number => Math.max(0, Math.log((force_kN - zero_kN) / (envelope_kN - zero_kN)));
  return { low: rise(expected.low_kN), middle: rise(expected.middle_kN), high: rise(expected.high_kN) };
}
