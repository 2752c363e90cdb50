import { setImmediate, setTimeout } from 'node:timers/promises';
import type { WatchSample } from '@provinghouse/core';
import { type PracticeSession, startPractice } from './practice-session.ts';
import type { PracticeTruth } from './practice-truth.ts';
import type { WireOptions, WireProgress } from './wire.ts';

/** The far side of a wire, as the pacing sees it. */
export interface Outlet {
  /** Hands over samples in order; resolves when more may come. */
  readonly send: (samples: readonly WatchSample[], hasParted: boolean) => Promise<void>;
  readonly readers: () => number;
  /** Resolves when somebody reads. */
  readonly whenRead: () => Promise<void>;
  /** The pull is over. */
  readonly finish: (truth: PracticeTruth) => Promise<void>;
}

export interface Pacing {
  readonly session: PracticeSession;
  readonly start: () => void;
  readonly stop: () => void;
  readonly progress: () => WireProgress;
  readonly ended: Promise<WireProgress>;
}

/** Real milliseconds between two batches. */
const beat_ms = 5;
/** Longest stretch of the pull made in one batch. */
const stride_s = 0.1;

/** Runs a practice pull against the clock of the machine, or as fast as it is read; what was made is always handed over. */
export function paced(options: WireOptions, outlet: Outlet): Pacing {
  const session = startPractice(options);
  const { from_s = 0 } = options;
  // Nobody sees what passed before.
  if (from_s > 0) session.advance(from_s);
  const told = Promise.withResolvers<void>();
  const stopped = Promise.withResolvers<void>();
  const run: Run = { options, outlet, session, isStopped: false, stopped: stopped.promise, made: 0, sent: 0 };
  if (options.startWhen !== 'told') told.resolve();
  const progress = () => progressOf(run);
  const ended = Promise.race([told.promise, stopped.promise])
    .then(() => pump(run))
    .then(progress);
  // Nobody may be waiting when a wire breaks; the failure stays in `ended` for whoever asks.
  ended.catch(() => {});
  return {
    session,
    start: told.resolve,
    stop: () => {
      run.isStopped = true;
      stopped.resolve();
    },
    progress,
    ended,
  };
}

interface Run {
  readonly options: WireOptions;
  readonly outlet: Outlet;
  readonly session: PracticeSession;
  readonly stopped: Promise<void>;
  isStopped: boolean;
  made: number;
  sent: number;
}

async function pump(run: Run): Promise<void> {
  const { outlet, session, options } = run;
  await untilRead(run);
  let began_ms = performance.now();
  while (!run.isStopped) {
    if (outlet.readers() === 0 && options.whileUnread !== 'run on') {
      const since_ms = performance.now();
      await untilRead(run);
      began_ms += performance.now() - since_ms;
      continue;
    }
    const due_s = dueAt(run, began_ms);
    if (due_s > session.time_s()) await pass(run, Math.min(due_s - session.time_s(), stride_s));
    if (session.time_s() >= endOf(run)) return void (await outlet.finish(session.truth()));
    if (due_s - session.time_s() <= stride_s && options.speed !== 'as fast as it is read') await setTimeout(beat_ms);
    else await setImmediate();
  }
}

async function untilRead(run: Run): Promise<void> {
  if (run.options.whileUnread === 'run on' && (run.options.startWhen === 'told' || run.made > 0)) return;
  await Promise.race([run.outlet.whenRead(), run.stopped]);
}

async function pass(run: Run, seconds: number): Promise<void> {
  const samples = run.session.advance(seconds);
  run.made += samples.length;
  if (samples.length === 0) return;
  await Promise.race([run.outlet.send(samples, run.session.hasParted()), run.stopped]);
  if (!run.isStopped) run.sent += samples.length;
}

function dueAt({ options, session }: Run, began_ms: number): number {
  const { speed = 1 } = options;
  if (speed === 'as fast as it is read') return session.time_s() + stride_s;
  return (options.from_s ?? 0) + ((performance.now() - began_ms) / 1000) * speed;
}

function endOf({ options, session }: Run): number {
  if (!session.hasParted()) return Number.POSITIVE_INFINITY;
  return (session.truth().timeAtParting_s ?? 0) + (options.after_s ?? 2);
}

function progressOf({ session, outlet, made, sent }: Run): WireProgress {
  return { made, sent, time_s: session.time_s(), hasParted: session.hasParted(), readers: outlet.readers() };
}
