import { operatorStop, type Stage, startWatch, step, viewOf, type WatchOptions } from '@provinghouse/core';
import { type KnownPull, plainOptions } from './watch-pulls.ts';

/** What was forecast at one moment, as shares of the true maximum. */
export interface ForecastMoment {
  readonly naive: number;
  readonly middle: number;
  readonly width: number;
  readonly held: boolean;
}

export interface StageChange {
  readonly stage: Stage;
  readonly time_s: number;
  /** Force then over the true maximum. */
  readonly share: number;
}

/** How the watch followed one known pull. */
export interface Replay {
  readonly pull: KnownPull;
  readonly changes: readonly StageChange[];
  readonly accepted_kN: number | null;
  readonly maximumSoFar_kN: number | null;
  readonly ended: string | null;
  /** Time of the sample at which the end was known, not that of the end. */
  readonly endKnown_s: number | null;
  readonly withdrawn: number;
  readonly doubts: readonly string[];
  /** Maxima that were called final before the true parting (or, where nothing parted, at all). */
  readonly early: number;
  /** Share of the moments with a forecast, up to the maximum, at which it held; null without any. */
  readonly heldShare: number | null;
  /** Share of the moments between knee and maximum that had a forecast. */
  readonly givenShare: number;
  readonly byForce: ReadonlyMap<number, ForecastMoment | null>;
  readonly byTime: ReadonlyMap<number, ForecastMoment | null>;
}

export const WAYS = [0.6, 0.75, 0.9] as const;

/** Loading is taken to start where the true force passes this share of the maximum for good. */
const LOADED_SHARE = 0.02;

function loadedFrom_s(pull: KnownPull): number {
  let last = 0;
  for (const { time_s, force_kN } of pull.samples) {
    if (time_s >= pull.timeOfMaximum_s) break;
    if (force_kN < LOADED_SHARE * pull.maximum_kN) last = time_s;
  }
  return last;
}

/** Runs a pull through the watch; an operator stops it at its last sample. */
export function replay(pull: KnownPull, options: WatchOptions = plainOptions): Replay {
  const state = startWatch(options);
  const { memory } = state;
  const from_s = loadedFrom_s(pull);
  const changes: StageChange[] = [];
  const byForce = new Map<number, ForecastMoment | null>();
  const byTime = new Map<number, ForecastMoment | null>();
  let stage: Stage = 'slack';
  let closed = 0;
  let given = 0;
  let held = 0;
  let moments = 0;
  let early = 0;
  let wasEnded = false;
  let withdrawn = 0;
  let endKnown_s: number | null = null;
  const momentNow = (): ForecastMoment | null => {
    const { forecast } = memory;
    if (!forecast) return null;
    return {
      naive: (memory.maximum_kN ?? 0) / pull.maximum_kN,
      middle: forecast.maximum_kN / pull.maximum_kN,
      width: (forecast.upper90_kN - forecast.lower90_kN) / pull.maximum_kN,
      held: forecast.lower90_kN <= pull.maximum_kN && pull.maximum_kN <= forecast.upper90_kN,
    };
  };
  for (const sample of pull.samples) {
    step(state, sample);
    if (memory.stage !== stage) {
      stage = memory.stage;
      changes.push({ stage, time_s: sample.time_s, share: sample.force_kN / pull.maximum_kN });
    }
    if ((memory.ended !== null) !== wasEnded) {
      wasEnded = memory.ended !== null;
      endKnown_s = wasEnded ? sample.time_s : null;
      if (wasEnded && sample.time_s < (pull.timeOfParting_s ?? Number.POSITIVE_INFINITY)) early++;
      if (!wasEnded) withdrawn++;
    }
    if (memory.blocks.closed === closed || sample.time_s > pull.timeOfMaximum_s) continue;
    closed = memory.blocks.closed;
    const way = (memory.envelope_kN - memory.zero_kN) / (pull.maximum_kN - memory.zero_kN);
    const wayOfTime = (sample.time_s - from_s) / (pull.timeOfMaximum_s - from_s);
    for (const share of WAYS) {
      if (way >= share && !byForce.has(share)) byForce.set(share, momentNow());
      if (wayOfTime >= share && !byTime.has(share)) byTime.set(share, momentNow());
    }
    if (memory.kneeForce_kN === null) continue;
    moments++;
    const moment = momentNow();
    if (!moment) continue;
    given++;
    if (moment.held) held++;
  }
  operatorStop(state, pull.samples.at(-1)?.time_s ?? 0);
  const view = viewOf(state);
  return {
    pull,
    changes,
    accepted_kN: view.maximumAccepted_kN,
    maximumSoFar_kN: view.maximumSoFar_kN,
    ended: view.ended,
    endKnown_s,
    withdrawn,
    doubts: view.doubts,
    early,
    heldShare: given > 0 ? held / given : null,
    givenShare: moments > 0 ? given / moments : 0,
    byForce,
    byTime,
  };
}
