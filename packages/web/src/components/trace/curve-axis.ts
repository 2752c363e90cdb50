import type { PullCurve } from '@provinghouse/contract';

/** What force can be drawn against. */
export type Axis = 'extension' | 'table' | 'time';

export type Signal = readonly (number | null)[];

/** The axes a curve has signals for, the most telling first. */
export function axesOf(curve: PullCurve): Axis[] {
  return (['extension', 'table', 'time'] as const).filter((axis) => signalOf(curve, axis) !== null);
}

/** The samples along an axis; null in them where the recording has a hole. */
export function signalOf(curve: PullCurve, axis: Axis): Signal | null {
  if (axis === 'extension') return curve.extension_mm;
  return axis === 'table' ? curve.table_mm : curve.time_s;
}

/** The unit of an axis. */
export function axisUnit(axis: Axis): string {
  return axis === 'time' ? 's' : 'mm';
}

/** Where an instant lies on an axis: the sample nearest in time. Null without a time signal, or without samples. */
export function placeOf(curve: PullCurve, axis: Axis, time_s: number): number | null {
  const times = curve.time_s;
  const signal = signalOf(curve, axis);
  if (times === null || signal === null || times.length === 0) return null;
  return signal[nearestIndex(times, time_s)] ?? null;
}

/** Index of the value nearest to `wanted` in rising values: halves the range, so that a long curve costs little. */
export function nearestIndex(rising: readonly number[], wanted: number): number {
  let low = 0;
  let high = rising.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) < wanted) low = middle + 1;
    else high = middle;
  }
  const before = rising[low - 1];
  const at = rising[low] ?? 0;
  return before !== undefined && wanted - before < at - wanted ? low - 1 : low;
}

export interface Extent {
  readonly min: number;
  readonly max: number;
}

/** Least and greatest of a signal with a margin on both sides; a flat signal still gets a width. */
export function extentOf(values: Signal, margin: number): Extent {
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value === null) continue;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  if (min > max) return { min: 0, max: 1 };
  const room = (max - min || 1) * margin;
  return { min: min - room, max: max + room };
}
