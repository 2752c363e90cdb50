/** Samples [from, to] of a record, and the work already done up to `from`. */
export interface EnergySpan {
  readonly from: number;
  readonly to: number;
  /** 0 unless said; null, as a sum that missed a reading, stays null. */
  readonly before_J?: number | null;
}

/**
 * Work done on the piece between samples [from, to] in J (kN x mm), on top of what was done before: trapezoid rule over the travel, so a fall of the force or a travel
 * that runs back counts with its sign. Null when a travel reading is missing on the way. Energy as area under the force-extension curve: ASTM E6, tension work (memory).
 */
export function energyBetween(
  force_kN: Float64Array,
  travel_mm: Float64Array,
  { from, to, before_J = 0 }: EnergySpan,
): number | null {
  if (before_J === null) return null;
  let work = before_J;
  for (let i = from + 1; i <= to; i++) {
    const mean = ((force_kN[i] as number) + (force_kN[i - 1] as number)) / 2;
    work += mean * ((travel_mm[i] as number) - (travel_mm[i - 1] as number));
  }
  return Number.isNaN(work) ? null : work;
}
