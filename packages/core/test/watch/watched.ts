import type { TraceSignals } from '../../src/trace/index.ts';
import type { Stage, WatchOptions, WatchSample, WatchState, WatchView } from '../../src/watch/index.ts';
import { startWatch, step, viewOf } from '../../src/watch/index.ts';

export const plain: WatchOptions = {
  ruleLines: [],
  tableSpeedLimits_mm_per_min: null,
  rangeMaximum_kN: null,
  fixtureLimit_kN: null,
  area_mm2: null,
  agreedDrop_pct: null,
  silence_s: 2,
};

/** The samples of a record, in the order in which they came. */
export function samplesOf(signals: TraceSignals): WatchSample[] {
  const read = (values: Float64Array | null, i: number): number | null => {
    const value = values?.[i];
    return value === undefined || Number.isNaN(value) ? null : value;
  };
  return Array.from(signals.force_kN, (force_kN, i) => ({
    time_s: signals.time_s?.[i] ?? 0,
    force_kN,
    table_mm: read(signals.table_mm, i),
    extension_mm: read(signals.extension_mm, i),
  }));
}

export interface Watched {
  readonly state: WatchState;
  readonly view: WatchView;
  /** Stages in the order in which they were shown, repeats and all. */
  readonly stages: readonly Stage[];
}

/** Watches samples to the last one. */
export function watch(samples: readonly WatchSample[], options: WatchOptions = plain): Watched {
  const state = startWatch(options);
  const stages: Stage[] = [];
  for (const sample of samples) {
    step(state, sample);
    const { stage } = viewOf(state);
    if (stage !== stages.at(-1)) stages.push(stage);
  }
  return { state, view: viewOf(state), stages };
}

/** Samples with some of them changed. */
export function changed(
  samples: readonly WatchSample[],
  change: (sample: WatchSample, i: number) => Partial<WatchSample>,
): WatchSample[] {
  return samples.map((sample, i) => ({ ...sample, ...change(sample, i) }));
}

/** The table stops where it is for `lasts_s` at `from_s`, and the force relaxes meanwhile by `relaxes_kN`; then both go on. */
export function hesitating(
  samples: readonly WatchSample[],
  { from_s, lasts_s, relaxes_kN }: { readonly from_s: number; readonly lasts_s: number; readonly relaxes_kN: number },
): WatchSample[] {
  const at = samples.findIndex(({ time_s }) => time_s >= from_s);
  const [here, next] = [samples[at], samples[at + 1]];
  if (!here || !next) return [...samples];
  const step_s = next.time_s - here.time_s;
  const pause = Array.from({ length: Math.round(lasts_s / step_s) }, (_, i) => ({
    ...here,
    time_s: here.time_s + (i + 1) * step_s,
    force_kN: here.force_kN - relaxes_kN * (1 - Math.exp((-3 * i * step_s) / lasts_s)),
  }));
  const shift_s = pause.length * step_s;
  const after = samples.slice(at + 1).map((sample, i) => ({
    ...sample,
    time_s: sample.time_s + shift_s,
    // What relaxed is regained along the elastic line, a share at a time.
    force_kN: sample.force_kN - relaxes_kN * Math.exp(-i * step_s * 4),
  }));
  return [...samples.slice(0, at + 1), ...pause, ...after];
}
