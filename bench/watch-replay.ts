import {
  operatorStop,
  type Stage,
  startWatch,
  step,
  viewOf,
  type WatchOptions,
  type WatchSample,
  type WatchState,
} from '@provinghouse/core';
import { type KnownPull, plainOptions } from './watch-pulls.ts';

/** What was forecast at one moment, as shares of the true maximum. */
export interface ForecastMoment {
  readonly naive: number;
  readonly middle: number;
  readonly width: number;
  readonly held: boolean;
}

/** Where a warning comes first. */
export interface Warning {
  readonly time_s: number;
  /** Greatest force until then over the true maximum. */
  readonly share: number;
  /** Share of the loaded time to the maximum that is still to come. */
  readonly timeLeft: number;
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
  /** First "near maximum" before the maximum; null without one. */
  readonly warned: Warning | null;
  /** Where the forecast first expected so little more; nothing where it never did before the maximum. */
  readonly expected: ReadonlyMap<number, Warning>;
}

/** Rises still expected, over the force so far, for which `expected` is kept. */
export const RISES = [0.02, 0.03, 0.045, 0.06, 0.08, 0.1] as const;

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

interface Track {
  readonly pull: KnownPull;
  readonly from_s: number;
  readonly changes: StageChange[];
  readonly byForce: Map<number, ForecastMoment | null>;
  readonly byTime: Map<number, ForecastMoment | null>;
  readonly expected: Map<number, Warning>;
  warned: Warning | null;
  stage: Stage;
  closed: number;
  given: number;
  held: number;
  moments: number;
  early: number;
  withdrawn: number;
  endKnown_s: number | null;
}

function startTrack(pull: KnownPull): Track {
  return {
    pull,
    from_s: loadedFrom_s(pull),
    changes: [],
    byForce: new Map(),
    byTime: new Map(),
    expected: new Map(),
    warned: null,
    stage: 'slack',
    closed: 0,
    given: 0,
    held: 0,
    moments: 0,
    early: 0,
    withdrawn: 0,
    endKnown_s: null,
  };
}

function momentOf({ memory }: WatchState, { maximum_kN }: KnownPull): ForecastMoment | null {
  const { forecast } = memory;
  if (!forecast) return null;
  return {
    naive: (memory.maximum_kN ?? 0) / maximum_kN,
    middle: forecast.maximum_kN / maximum_kN,
    width: (forecast.upper90_kN - forecast.lower90_kN) / maximum_kN,
    held: forecast.lower90_kN <= maximum_kN && maximum_kN <= forecast.upper90_kN,
  };
}

function noteStage(track: Track, { memory }: WatchState, { time_s, force_kN }: WatchSample): void {
  const { pull } = track;
  if (memory.stage !== track.stage) {
    track.stage = memory.stage;
    track.changes.push({ stage: memory.stage, time_s, share: force_kN / pull.maximum_kN });
  }
  if ((memory.ended !== null) === (track.endKnown_s !== null)) return;
  track.endKnown_s = memory.ended === null ? null : time_s;
  if (memory.ended === null) track.withdrawn++;
  else if (time_s < (pull.timeOfParting_s ?? Number.POSITIVE_INFINITY)) track.early++;
}

function noteWarning(track: Track, { memory }: WatchState, warning: Warning): void {
  if (memory.stage === 'near maximum') track.warned ??= warning;
  if (!memory.forecast) return;
  const rise = memory.forecast.maximum_kN / memory.envelope_kN - 1;
  for (const most of RISES) if (rise < most && !track.expected.has(most)) track.expected.set(most, warning);
}

/** At a closed block up to the maximum. */
function noteForecast(track: Track, state: WatchState, time_s: number): void {
  const { pull, from_s } = track;
  const { memory } = state;
  const way = (memory.envelope_kN - memory.zero_kN) / (pull.maximum_kN - memory.zero_kN);
  const wayOfTime = (time_s - from_s) / (pull.timeOfMaximum_s - from_s);
  const moment = momentOf(state, pull);
  for (const share of WAYS) {
    if (way >= share && !track.byForce.has(share)) track.byForce.set(share, moment);
    if (wayOfTime >= share && !track.byTime.has(share)) track.byTime.set(share, moment);
  }
  noteWarning(track, state, { time_s, share: way, timeLeft: 1 - wayOfTime });
  if (memory.kneeForce_kN === null) return;
  track.moments++;
  if (!moment) return;
  track.given++;
  if (moment.held) track.held++;
}

/** Runs a pull through the watch; an operator stops it at its last sample. */
export function replay(pull: KnownPull, options: WatchOptions = plainOptions): Replay {
  const state = startWatch(options);
  const track = startTrack(pull);
  for (const sample of pull.samples) {
    step(state, sample);
    noteStage(track, state, sample);
    const { closed } = state.memory.blocks;
    if (closed === track.closed || sample.time_s > pull.timeOfMaximum_s) continue;
    track.closed = closed;
    noteForecast(track, state, sample.time_s);
  }
  operatorStop(state, pull.samples.at(-1)?.time_s ?? 0);
  const view = viewOf(state);
  const { changes, endKnown_s, withdrawn, early, given, held, moments, byForce, byTime, warned, expected } = track;
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
    warned,
    expected,
  };
}
