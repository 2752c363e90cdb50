import { extremesOf } from './extremes.ts';
import type { TraceSignals } from './signals.ts';

/** Signals thinned to the samples worth drawing; all arrays have one length. */
export interface ThinnedSignals {
  readonly time_s: number[] | null;
  readonly force_kN: number[];
  readonly table_mm: (number | null)[] | null;
  readonly extension_mm: (number | null)[] | null;
}

/**
 * Thins signals to about `points` samples for drawing. Each stretch of the record keeps its first, lowest and highest force, and the
 * last sample of the record stays, so that no peak, dip or parting is lost to the eye. Gaps (NaN) in the other signals become null.
 */
export function thinSignals(signals: TraceSignals, points: number): ThinnedSignals {
  const kept = keptSamples(signals.force_kN, points);
  const pick = (values: Float64Array | null) => values && kept.map((index) => finite(values[index]));
  return {
    time_s: signals.time_s && kept.map((index) => signals.time_s?.[index] ?? 0),
    force_kN: kept.map((index) => signals.force_kN[index] ?? 0),
    table_mm: pick(signals.table_mm),
    extension_mm: pick(signals.extension_mm),
  };
}

function finite(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}

function keptSamples(force: Float64Array, points: number): number[] {
  const count = force.length;
  if (count <= points) return Array.from({ length: count }, (_, index) => index);
  const stretch = Math.max(3, Math.ceil((3 * count) / points));
  const kept: number[] = [];
  for (let from = 0; from < count; from += stretch) {
    const { low, high } = extremesOf(force, from, Math.min(count, from + stretch));
    kept.push(...new Set([from, Math.min(low, high), Math.max(low, high)]));
  }
  if (kept.at(-1) !== count - 1) kept.push(count - 1);
  return kept;
}
