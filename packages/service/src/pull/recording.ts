import type { LiveMessage } from '@provinghouse/contract';
import {
  operatorStop,
  startWatch,
  step,
  tick,
  viewOf,
  type WatchOptions,
  type WatchSample,
  type WatchState,
  type WatchView,
} from '@provinghouse/core';
import { type LiveCurve, liveCurve, thinned } from './live-curve.ts';
import type { OpenKeeper, SealedRecording, TimedMark } from './ports.ts';

/** How a recording came to its end. */
export interface RecordingEnd {
  readonly view: WatchView;
  /** Or what kept it from being sealed; what was written lies on disc all the same. */
  readonly sealed: SealedRecording | Error;
  readonly marks: readonly TimedMark[];
}

export interface Recording {
  /** A piece of bytes gave no reading. */
  rejected(): void;
  mark(words: string): void;
  /** The operator ends it. */
  stop(): void;
  /** Left as it is, to be recovered. */
  abandon(): Promise<void>;
  /** What a viewer who comes late is told. */
  story(): LiveMessage[];
  /** Resolves when it has ended, sealed or not. */
  readonly ended: Promise<RecordingEnd>;
}

export interface RecordingOptions {
  readonly watch: WatchOptions;
  readonly openKeeper: OpenKeeper;
  readonly tell: (message: LiveMessage) => void;
  /** Called when the end is there and the sealing begins. */
  readonly onClosing?: () => void;
  /** Seconds on the clock of the samples that the recording runs on after parting, so that a parting taken back is seen; 1.5. */
  readonly after_s?: number;
}

/** Time between two views told, ms. */
const viewEvery_ms = 100;
/** After an end by parting a source that says nothing for this long is not waited for, ms. */
const quietAfterEnd_ms = 700;

/** Marks and troubles told to a viewer who comes late. */
const storyLength = 200;

interface Run {
  readonly state: WatchState;
  readonly curve: LiveCurve;
  readonly marks: TimedMark[];
  readonly told: LiveMessage[];
  received: number;
  rejected: number;
  last_s: number;
  /** Wall clock of the last sample, ms. */
  lastAt_ms: number;
  /** Time of the samples at which the watch was first seen to have ended. */
  overAt_s: number | null;
  isClosed: boolean;
}

/**
 * Follows one recording: what is written is watched, thinned and told; the end is found by the watch, by the operator or by silence. Nothing
 * here waits for a viewer.
 */
export async function record(options: RecordingOptions): Promise<Recording> {
  const { watch, openKeeper, tell, onClosing, after_s = 1.5 } = options;
  const run = startRun(watch);
  const { promise: ended, resolve } = Promise.withResolvers<RecordingEnd>();
  const keeper = await openKeeper({ kept: take, trouble: tellTrouble });
  const timer = setInterval(beat, viewEvery_ms);

  function tellOnce(message: LiveMessage): void {
    run.told.push(message);
    if (run.told.length > storyLength) run.told.shift();
    tell(message);
  }
  function tellTrouble(words: string): void {
    // Once the chain has parted, a rig that hangs up is no trouble.
    if (run.overAt_s !== null) return;
    tellOnce({ kind: 'trouble', time_s: run.received === 0 ? null : run.last_s, words });
  }
  function take(samples: readonly WatchSample[]): void {
    if (samples.length === 0) return;
    follow(run, samples);
    tell({ kind: 'samples', samples: thinned(samples), received: run.received, rejected: run.rejected });
  }
  function beat(): void {
    const view = viewNow(run);
    if (run.received > 0) tell({ kind: 'view', view });
    if (isOver(run, view, after_s)) close(view);
  }
  function close(view: WatchView): void {
    if (run.isClosed) return;
    run.isClosed = true;
    clearInterval(timer);
    onClosing?.();
    const end = (sealed: SealedRecording | Error) => resolve({ view: viewOf(run.state), sealed, marks: run.marks });
    keeper
      .seal(view.ended ?? 'operator', run.marks)
      .then(end, (error: unknown) => end(error instanceof Error ? error : new Error(String(error))));
  }
  return {
    rejected() {
      run.rejected += 1;
    },
    mark(words) {
      const mark = { time_s: run.last_s, words };
      run.marks.push(mark);
      keeper.mark(words);
      tellOnce({ kind: 'mark', ...mark });
    },
    stop() {
      operatorStop(run.state, run.last_s);
      beat();
    },
    abandon() {
      run.isClosed = true;
      clearInterval(timer);
      return keeper.abandon();
    },
    story: () => storyOf(run),
    ended,
  };
}

function startRun(watch: WatchOptions): Run {
  return {
    state: startWatch(watch),
    curve: liveCurve(),
    marks: [],
    told: [],
    received: 0,
    rejected: 0,
    last_s: 0,
    lastAt_ms: performance.now(),
    overAt_s: null,
    isClosed: false,
  };
}

function follow(run: Run, samples: readonly WatchSample[]): void {
  for (const sample of samples) step(run.state, sample);
  run.received += samples.length;
  run.last_s = samples.at(-1)?.time_s ?? run.last_s;
  run.lastAt_ms = performance.now();
  run.curve.add(samples);
}

/** The clock of the samples may run faster than ours; only what passes without a sample is added to it. */
function viewNow(run: Run): WatchView {
  const quiet_s = (performance.now() - run.lastAt_ms) / 1000;
  if (quiet_s > 1) tick(run.state, run.last_s + quiet_s);
  return viewOf(run.state);
}

/** A parting may be taken back by a force that returns, so the recording runs on a little after it. */
function isOver(run: Run, view: WatchView, after_s: number): boolean {
  if (view.ended === null) {
    run.overAt_s = null;
    return false;
  }
  run.overAt_s ??= run.last_s;
  if (view.ended === 'operator' || view.ended === 'silence') return true;
  return run.last_s - run.overAt_s >= after_s || performance.now() - run.lastAt_ms > quietAfterEnd_ms;
}

function storyOf(run: Run): LiveMessage[] {
  const samples = run.curve.points();
  if (samples.length === 0) return [...run.told];
  return [
    { kind: 'samples', samples, received: run.received, rejected: run.rejected },
    ...run.told,
    { kind: 'view', view: viewOf(run.state) },
  ];
}
