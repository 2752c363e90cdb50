import { InputError } from '../errors.ts';
import { listEvents } from './event-list.ts';
import { readForce } from './force-part.ts';
import type { ReadOptions, TraceOptions } from './options.ts';
import { parseTrace } from './parse-trace.ts';
import { prepare } from './prepared.ts';
import type { TraceReading } from './reading.ts';
import { judgeRecord } from './record-validity.ts';
import type { TraceSignals } from './signals.ts';
import { spikesOfPull } from './spikes.ts';
import { readTravel } from './travel-part.ts';

function positive(name: string, value: number | undefined): void {
  if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
    throw new InputError('trace/option-out-of-range', `${name} must be a number above 0, not ${value}.`, {
      name,
      value,
    });
  }
}

function checkOptions(options: ReadOptions): void {
  positive('area_mm2', options.area_mm2);
  positive('gaugeLength_mm', options.gaugeLength_mm);
  positive('links', options.links);
  positive('pitch_mm', options.pitch_mm);
  positive('offset_pct', options.offset_pct);
  positive('rig.rangeMaximum_kN', options.rig?.rangeMaximum_kN);
}

/**
 * Reads the signals of one pull: the same numbers whether they came from a file or live. Times count as recorded; forces have the zero offset taken
 * off where slack shows one. What each number is and what it rests on stands at the function that finds it: `findSlack`, `rejectSpikes`,
 * `findParting`, `findMaximum`, `findElastic`, `findKnee`, `findRates`, `energyBetween`, `findDips`, `findPauses`, `findPlateau`,
 * `maximumUncertainty`. Absent numbers are null. Throws `trace/nothing-loaded`, `trace/negative-force`, `trace/option-out-of-range`.
 */
export function readSignals(signals: TraceSignals, options: ReadOptions = {}): TraceReading {
  checkOptions(options);
  const prepared = prepare(signals, options);
  const force = readForce(prepared, options);
  const travel = readTravel(prepared, force, options);
  const events = listEvents(prepared, force);
  const verdict = judgeRecord(prepared, force, travel, events, options);
  const { sampling, clean } = prepared;
  const at = (i: number): number => signals.time_s?.[i] ?? Number.NaN;
  const timed = signals.time_s !== null;
  return {
    columns: signals.columns,
    samples: signals.force_kN.length,
    duration_s: sampling.duration_s,
    sampleRate_Hz: sampling.rate_Hz,
    zeroForce_kN: prepared.slack.level_kN,
    resolution_kN: prepared.resolution_kN,
    noise_kN: prepared.noise.overall,
    maximumForce_kN: force.maximum.force_kN,
    maximumForceUncertainty_kN: force.uncertainty_kN,
    maximumIsAtLeast: verdict.maximumIsAtLeast,
    timeAtMaximum_s: timed ? at(force.maximum.sample) : null,
    parted: force.parting !== null,
    partingForce_kN: force.parting ? (clean[force.parting.last] as number) : null,
    timeAtParting_s: force.parting && timed ? at(force.parting.last) : null,
    ...travel.numbers,
    spikes: timed
      ? spikesOfPull(prepared.rejected, force.parting).map((i) => ({
          time_s: at(i),
          force_kN: signals.force_kN[i] as number,
        }))
      : [],
    events: events.list,
    valid: verdict.valid,
    notes: verdict.notes,
  };
}

/**
 * Parses and reads one recording in plain delimited text.
 *
 * @example
 * readTrace(bytes, { area_mm2: 100.5, links: 5, pitch_mm: 24 }).maximumForce_kN
 */
export function readTrace(bytes: Uint8Array, options: TraceOptions = {}): TraceReading {
  return readSignals(parseTrace(bytes, options), options);
}
