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
import { type Gap, noForceWords } from '@provinghouse/rig';
import { type LiveCurve, liveCurve, thinned } from './live-curve.ts';
import type { Keeper, OpenKeeper, TimedMark } from './ports.ts';
import { stoppedWords } from './spool-content.ts';

/** How a recording came to its end. What was written lies on disc, not yet sealed. */
export interface RecordingEnd {
  readonly view: WatchView;
  readonly samples: number;
  readonly rejected: number;
  readonly marks: readonly TimedMark[];
  /** What went wrong as it was closed; null when nothing did. */
  readonly fault: Error | null;
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
  /** Resolves when it has ended and everything is on disc. */
  readonly ended: Promise<RecordingEnd>;
}

export interface RecordingOptions {
  readonly watch: WatchOptions;
  readonly openKeeper: OpenKeeper;
  readonly tell: (message: LiveMessage) => void;
  /** Called when everything is open, before anything is told. */
  readonly onOpen?: () => void;
  /** Called when the end is there. */
  readonly onClosing?: () => void;
  /** Seconds on the clock of the samples that the recording runs on after parting, so that a parting taken back is seen; 1.5. */
  readonly after_s?: number;
}

/** Time between two views told, ms. */
const viewEvery_ms = 100;
/** After an end by parting a source that says nothing for this long is not waited for, ms. */
const quietAfterEnd_ms = 700;

/** Hesitations shorter than this are in the record and its notes, and no news while it runs: there would be no end of them. */
const toldGap_s = 0.1;

/** Marks, troubles and gaps told to a viewer who comes late. */
const storyLength = 200;

interface Run {
  readonly state: WatchState;
  readonly curve: LiveCurve;
  readonly marks: TimedMark[];
  readonly told: LiveMessage[];
  received: number;
  rejected: number;
  last_s: number;
  /** Last sample of before it broke off. */
  earlierTo_s: number;
  /** Wall clock of the last sample, ms. */
  lastAt_ms: number;
  /** Time of the samples at which the watch was first seen to have ended. */
  overAt_s: number | null;
  isOpen: boolean;
  isClosed: boolean;
}

/**
 * Follows one recording: what is written is watched, thinned and told; the end is found by the watch, by the operator or by silence. Nothing
 * here waits for a viewer. Of a recording that is gone on with, what was written before is watched first, so that stage, maximum and curve go on
 * from there, and its story is told.
 */
export async function record(options: RecordingOptions): Promise<Recording> {
  const { watch, openKeeper, tell, onClosing, after_s = 1.5 } = options;
  const run = startRun(watch);
  const { promise: ended, resolve } = Promise.withResolvers<RecordingEnd>();
  const keeper = await openKeeper({ earlier: takeEarlier, kept: take, gap: tellGap, trouble: tellTrouble });
  const timer = setInterval(beat, viewEvery_ms);
  takeUp(run, keeper);
  options.onOpen?.();
  run.isOpen = true;
  for (const message of storyOf(run)) tell(message);

  function tellOnce(message: LiveMessage): void {
    run.told.push(message);
    if (run.told.length > storyLength) run.told.shift();
    if (run.isOpen) tell(message);
  }
  function tellTrouble(words: string): void {
    // Once the chain has parted, a rig that hangs up is no trouble.
    if (run.overAt_s !== null) return;
    tellOnce({ kind: 'trouble', time_s: run.received === 0 ? null : run.last_s, words });
  }
  function tellGap(gap: Gap): void {
    if (isTold(gap)) tellOnce(gapMessage(gap));
  }
  function takeEarlier(samples: readonly WatchSample[]): void {
    follow(run, samples);
    run.earlierTo_s = run.last_s;
  }
  function take(samples: readonly WatchSample[]): void {
    if (samples.length === 0) return;
    follow(run, samples);
    if (!run.isOpen) return;
    tell({ kind: 'samples', samples: thinned(samples), received: run.received, rejected: run.rejected });
  }
  function beat(): void {
    const view = viewNow(run);
    if (run.received > 0) tell(viewMessage(run, view));
    if (isOver(run, view, after_s)) close(view);
  }
  function close(view: WatchView): void {
    if (run.isClosed) return;
    run.isClosed = true;
    clearInterval(timer);
    onClosing?.();
    const end = (fault: Error | null) => {
      const { received: samples, rejected, marks } = run;
      resolve({ view: viewOf(run.state), samples, rejected, marks, fault });
    };
    keeper
      .close(view.ended ?? 'operator')
      .then(() => end(null))
      .catch((error: unknown) => end(error instanceof Error ? error : new Error(String(error))));
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
      return keeper.close(stoppedWords);
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
    earlierTo_s: 0,
    lastAt_ms: performance.now(),
    overAt_s: null,
    isOpen: false,
    isClosed: false,
  };
}

/** What was said before the recording broke off comes before what was said since. */
function takeUp(run: Run, { before }: Keeper): void {
  run.lastAt_ms = performance.now();
  if (!before) return;
  run.rejected += before.rejected;
  run.marks.unshift(...before.marks);
  const said: LiveMessage[] = [
    ...before.marks.map((mark) => ({ kind: 'mark', ...mark }) as const),
    ...before.troubles.map((trouble) => ({ kind: 'trouble', ...trouble }) as const),
    // The break itself is told when it is over.
    ...before.gaps.filter((gap) => gap.from_s < run.earlierTo_s && isTold(gap)).map(gapMessage),
  ];
  run.told.unshift(...said.slice(-storyLength));
}

function follow(run: Run, samples: readonly WatchSample[]): void {
  for (const sample of samples) step(run.state, sample);
  run.received += samples.length;
  run.last_s = samples.at(-1)?.time_s ?? run.last_s;
  run.lastAt_ms = performance.now();
  run.curve.add(samples);
}

function isTold({ from_s, to_s, why }: Gap): boolean {
  return why !== noForceWords || to_s - from_s > toldGap_s;
}

function gapMessage({ from_s, to_s, why }: Gap): LiveMessage {
  return { kind: 'gap', from_s, to_s, words: `Gap from ${from_s.toFixed(1)} s to ${to_s.toFixed(1)} s: ${why}.` };
}

function quietOf({ lastAt_ms }: Run): number {
  return (performance.now() - lastAt_ms) / 1000;
}

function viewMessage(run: Run, view: WatchView): LiveMessage {
  return { kind: 'view', view, quiet_s: quietOf(run) };
}

/** The clock of the samples may run faster than ours; only what passes without a sample is added to it. */
function viewNow(run: Run): WatchView {
  const quiet_s = quietOf(run);
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
    viewMessage(run, viewOf(run.state)),
  ];
}
