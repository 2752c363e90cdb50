import { InputError } from '../errors.ts';
import { placeOfLargest } from './largest.ts';
import type { NoiseMap } from './noise.ts';
import { differenceNoise, mapNoise, smallestStep } from './noise.ts';
import type { ReadOptions } from './options.ts';
import type { Sampling } from './sampling.ts';
import { readSampling } from './sampling.ts';
import type { TraceSignals } from './signals.ts';
import type { SlackFinding } from './slack.ts';
import { findSlack } from './slack.ts';
import { rejectSpikes } from './spikes.ts';

/** A record made ready: spikes bridged, zero offset taken off, travel chosen. */
export interface Prepared {
  readonly signals: TraceSignals;
  /** Force without spikes and offset. */
  readonly clean: Float64Array;
  /** The first sample of the largest clean force in the whole record. */
  readonly peak: number;
  readonly rejected: readonly number[];
  readonly slack: SlackFinding;
  readonly noise: NoiseMap;
  readonly sampling: Sampling;
  readonly resolution_kN: number | null;
  readonly travel_mm: Float64Array | null;
  readonly travelFrom: 'extension' | 'table' | null;
  /** Compliance taken off the table travel, mm/kN; null when none was. */
  readonly compliance_mm_per_kN: number | null;
}

interface Bounds {
  readonly low: number;
  readonly peak: number;
  /** First sample of the peak. */
  readonly peakAt: number;
}

/** Lowest and largest force in one pass. */
function boundsOf(force: Float64Array): Bounds {
  let low = force[0] as number;
  let peak = low;
  let peakAt = 0;
  for (let i = 1; i < force.length; i++) {
    const value = force[i] as number;
    if (value > peak) {
      peak = value;
      peakAt = i;
    } else if (value < low) low = value;
  }
  return { low, peak, peakAt };
}

function checkLoaded(force: Float64Array, { low, peak }: Bounds, resolution: number | null): void {
  const noise = differenceNoise(force, 0, force.length);
  if (-low > 2 * Math.max(0, peak) && -low > 8 * noise) {
    throw new InputError(
      'trace/negative-force',
      `The forces run down to ${low} kN: a pull must be recorded with the tension positive. Turn the sign of the force column.`,
      { lowest_kN: low },
    );
  }
  // White noise alone spans about nine of its standard deviations in 1e5 samples.
  if (peak <= 0 || peak - low <= Math.max(12 * noise, 5 * (resolution ?? 0))) {
    throw new InputError(
      'trace/nothing-loaded',
      `Nothing was loaded: the largest force, ${peak} kN, does not stand out from noise and zero.`,
      {
        maximum_kN: peak,
        noise_kN: noise,
      },
    );
  }
}

function lowered(force: Float64Array, offset: number): Float64Array {
  const lower = new Float64Array(force.length);
  for (let i = 0; i < force.length; i++) lower[i] = (force[i] as number) - offset;
  return lower;
}

interface Travel {
  readonly values: Float64Array | null;
  readonly from: 'extension' | 'table' | null;
  readonly compliance: number | null;
}

/** The extension when there is one, else the table less the stretch of the rig where its compliance is known. */
function chooseTravel(signals: TraceSignals, clean: Float64Array, options: ReadOptions): Travel {
  if (signals.extension_mm) return { values: signals.extension_mm, from: 'extension', compliance: null };
  const table = signals.table_mm;
  if (!table) return { values: null, from: null, compliance: null };
  const compliance = options.rig?.compliance_mm_per_kN ?? null;
  if (compliance === null) return { values: table, from: 'table', compliance: null };
  return { values: table.map((value, i) => value - compliance * (clean[i] as number)), from: 'table', compliance };
}

/** Makes a record ready for reading. Throws `trace/nothing-loaded` and `trace/negative-force`. */
export function prepare(signals: TraceSignals, options: ReadOptions): Prepared {
  const { force_kN, time_s } = signals;
  const sampling = readSampling(time_s);
  const noise = mapNoise(force_kN, sampling.step_s);
  const resolution_kN = smallestStep(force_kN);
  const { force_kN: unspiked, rejected } = rejectSpikes(force_kN, noise, resolution_kN, sampling.rate_Hz);
  const bounds = boundsOf(unspiked);
  checkLoaded(unspiked, bounds, resolution_kN);
  const travelSeen = signals.table_mm ?? signals.extension_mm;
  const slack = findSlack({
    force_kN: unspiked,
    time_s,
    travel_mm: travelSeen,
    resolution_kN,
    step_s: sampling.step_s,
    peak: bounds.peakAt,
  });
  const offset = slack.offset_kN;
  const clean = offset === 0 ? unspiked : lowered(unspiked, offset);
  const travel = chooseTravel(signals, clean, options);
  return {
    signals,
    clean,
    // Rounding of the difference may make an earlier sample as large.
    peak: offset === 0 ? bounds.peakAt : placeOfLargest(clean, 0, clean.length - 1),
    rejected,
    slack,
    noise,
    sampling,
    resolution_kN,
    travel_mm: travel.values,
    travelFrom: travel.from,
    compliance_mm_per_kN: travel.compliance,
  };
}
