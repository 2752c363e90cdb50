import type { PullCurve } from '@provinghouse/contract';

/** One piece in the figure. */
export interface TracePanel {
  readonly piece: string;
  readonly curve: PullCurve | null;
  readonly use: 'value' | 'at least' | 'none';
  /** The maximum as it was read, spikes left out; null where there is none. */
  readonly maximum_kN: number | null;
  /** Samples rejected as electrical: drawn as crosses, not as part of the curve. */
  readonly spikes: readonly { readonly time_s: number; readonly force_kN: number }[];
}

/** What a curve is drawn against. */
export interface Axis {
  readonly values: readonly (number | null)[];
  readonly words: string;
}

/** The best axis a curve has: see the figure. */
export function axisOf(curve: PullCurve): Axis {
  if (curve.extension_mm !== null) return { values: curve.extension_mm, words: 'extension, mm' };
  if (curve.table_mm !== null) return { values: curve.table_mm, words: 'table travel, mm' };
  if (curve.time_s !== null) return { values: curve.time_s, words: 'time, s' };
  return { values: curve.force_kN.map((_, index) => index + 1), words: 'number of sample' };
}

/** Greatest value of each kind of axis: panels of one kind share a scale. */
export type AcrossExtents = ReadonlyMap<string, number>;

/** Of many thousand values: spreading them over an argument list would overflow the stack. */
export function greatestOf(values: readonly (number | null)[]): number {
  return values.reduce<number>((best, value) => (value !== null && value > best ? value : best), 0);
}

/** Highest force drawn as part of the curve. */
export function highestForce(panel: TracePanel): number {
  const { curve } = panel;
  if (curve === null) return 0;
  return greatestOf(curve.force_kN.filter((_, index) => !isSpike(panel, index)));
}

/** A sample of the curve that was rejected: the same time and, where time is not kept, the same force. */
export function isSpike(panel: TracePanel, index: number): boolean {
  const time_s = panel.curve?.time_s?.[index];
  const force_kN = panel.curve?.force_kN[index];
  return panel.spikes.some((spike) =>
    time_s === undefined ? spike.force_kN === force_kN : Math.abs(spike.time_s - time_s) < 1e-6,
  );
}

export function acrossExtents(panels: readonly TracePanel[]): AcrossExtents {
  const axes = panels.flatMap((panel) => (panel.curve === null ? [] : [axisOf(panel.curve)]));
  const byWords = Map.groupBy(axes, (axis) => axis.words);
  return new Map([...byWords].map(([words, group]) => [words, greatestOf(group.flatMap((axis) => axis.values))]));
}
