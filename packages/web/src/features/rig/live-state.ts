import type { LiveMessage } from '@provinghouse/contract';
import { thinCurve, type WatchView } from '@provinghouse/core';

type Told<K extends LiveMessage['kind']> = Extract<LiveMessage, { readonly kind: K }>;

/** All that a viewer of a rig has been told of the pull at hand. */
export interface LiveState {
  readonly armed: Told<'armed'> | null;
  readonly startedAt: string | null;
  readonly isDisarmed: boolean;
  /** The newest force, before the start as well; null until a reading came. */
  readonly force_kN: number | null;
  /** The curve of the recording, thinned; grows by replacement. */
  readonly times_s: readonly number[];
  readonly forces_kN: readonly number[];
  readonly received: number;
  readonly rejected: number;
  readonly view: WatchView | null;
  readonly marks: readonly Told<'mark'>[];
  readonly troubles: readonly Told<'trouble'>[];
  readonly gaps: readonly Told<'gap'>[];
  /** Seconds for which nothing has come. */
  readonly quiet_s: number;
  /** How far the keeping of a recording that has ended is, 0 to 1; null when none is being kept. */
  readonly keeping: number | null;
  readonly ended: Told<'ended'> | null;
}

export const nothingTold: LiveState = {
  armed: null,
  startedAt: null,
  isDisarmed: false,
  force_kN: null,
  times_s: [],
  forces_kN: [],
  received: 0,
  rejected: 0,
  view: null,
  marks: [],
  troubles: [],
  gaps: [],
  quiet_s: 0,
  keeping: null,
  ended: null,
};

const mostPoints = 6000;
const mostWords = 50;

/** What is known after one more message. A new arming begins a new story. */
export function told(state: LiveState, message: LiveMessage): LiveState {
  switch (message.kind) {
    case 'armed':
      return { ...nothingTold, armed: message };
    case 'started':
      return { ...state, startedAt: message.at, force_kN: null };
    case 'disarmed':
      return { ...nothingTold, isDisarmed: true };
    case 'samples':
      return withSamples(state, message);
    case 'view':
      return { ...state, view: message.view, quiet_s: message.quiet_s };
    case 'mark':
      return { ...state, marks: [...state.marks, message].slice(-mostWords) };
    case 'trouble':
      return { ...state, troubles: [...state.troubles, message].slice(-mostWords) };
    case 'gap':
      return { ...state, gaps: [...state.gaps, message].slice(-mostWords) };
    case 'keeping':
      return { ...state, keeping: message.share < 1 ? message.share : null };
    case 'ended':
      return {
        ...state,
        keeping: null,
        ended: message,
        view: message.view,
        received: message.samples,
        rejected: message.rejected,
      };
  }
}

function withSamples(state: LiveState, { samples, received, rejected }: Told<'samples'>): LiveState {
  const force_kN = samples.at(-1)?.force_kN ?? state.force_kN;
  // Before the start readings are shown and not kept.
  if (received === 0) return { ...state, force_kN };
  const times_s = [...state.times_s, ...samples.map((sample) => sample.time_s)];
  const forces_kN = [...state.forces_kN, ...samples.map((sample) => sample.force_kN)];
  const curve = times_s.length > mostPoints ? halved(times_s, forces_kN) : { times_s, forces_kN };
  return { ...state, ...curve, force_kN, received, rejected };
}

function halved(times_s: readonly number[], forces_kN: readonly number[]) {
  const { x, y } = thinCurve(Float64Array.from(times_s), Float64Array.from(forces_kN), mostPoints / 2);
  return { times_s: x, forces_kN: y };
}
