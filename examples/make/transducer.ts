import { indicated_kN, type Random, type Transducer } from '@provinghouse/rig/practice';
import type { PullHistory } from './chain-pull.ts';

/** Lone samples thrown by a bad cable: the time and the false force to be recorded. */
export interface Spike {
  readonly time_s: number;
  readonly force_kN: number;
}

export interface RecorderSettings {
  readonly transducer: Transducer;
  readonly sampleRate_Hz: number;
  readonly spikes: readonly Spike[];
  /** True force at which the recorder stopped on the way up; null where it ran to the end. */
  readonly stopsAt_kN: number | null;
}

/** What the recorder kept, before it is rounded to the digits of the file. */
export interface Recording {
  readonly time_s: readonly number[];
  readonly force_kN: readonly number[];
  readonly table_mm: readonly number[];
  readonly extension_mm: readonly number[];
}

/** Samples a pull as its rig would: zero, drift, gain, noise, spikes, and the stop at the end of the range. */
export function record(history: PullHistory, settings: RecorderSettings, random: Random): Recording {
  const { transducer, sampleRate_Hz } = settings;
  const every = Math.round(1 / (sampleRate_Hz * history.step_s));
  const stop = stopStep(history, settings.stopsAt_kN);
  const tableNoise = 0.004;
  const kept: { time_s: number[]; force_kN: number[]; table_mm: number[]; extension_mm: number[] } = {
    time_s: [],
    force_kN: [],
    table_mm: [],
    extension_mm: [],
  };
  for (let i = 0; i < stop; i += every) {
    const time_s = i * history.step_s;
    const spike = settings.spikes.find((s) => Math.round(s.time_s * sampleRate_Hz) === i / every);
    const force_kN = history.force_kN[i] ?? 0;
    const seen = indicated_kN(transducer, { force_kN, time_s, noise_kN: random.normal(0, transducer.noise_kN) });
    kept.time_s.push(time_s);
    kept.force_kN.push(Math.min(spike?.force_kN ?? seen, transducer.rangeMaximum_kN));
    kept.table_mm.push((history.table_mm[i] ?? 0) + random.normal(0, tableNoise));
    kept.extension_mm.push((history.extension_mm[i] ?? 0) + random.normal(0, tableNoise));
  }
  return kept;
}

function stopStep(history: PullHistory, stopsAt_kN: number | null): number {
  if (stopsAt_kN === null) return history.force_kN.length;
  const step = history.force_kN.findIndex((force) => force >= stopsAt_kN);
  return step < 0 ? history.force_kN.length : step;
}
