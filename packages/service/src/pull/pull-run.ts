import type { LiveMessage, PullAtRig } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import type { Effects } from '../effects.ts';
import { type Cleared, refuseInEarnest } from './arming.ts';
import { keepEnd } from './keep-end.ts';
import { keepPull } from './keeper.ts';
import type { RecordingHead } from './ports.ts';
import { type Recording, type RecordingEnd, record } from './recording.ts';
import type { SpoolShelf, ToGoOn } from './recovery.ts';
import { type Relay, relay } from './relay.ts';
import type { SealedPull } from './seal-pull.ts';
import { watchOptionsOf } from './watch-options.ts';
import type { WiredRig } from './wired-rig.ts';

/** One pull on one rig, from arming to the record. */
export interface PullRun {
  readonly facts: () => PullAtRig;
  start(): Promise<void>;
  mark(words: string): void;
  /** Ends a recording; gives up a pull that has not begun. */
  stop(): Promise<void>;
  /** Lets go of everything without an end: what is on disc waits to be recovered. */
  abandon(): Promise<void>;
  /** Told that its recording, left on disc at its end, is in the record now. */
  kept(sealed: SealedPull | null): void;
  story(): readonly LiveMessage[];
}

export interface PullRunOptions {
  readonly wired: WiredRig;
  readonly cleared: Cleared;
  readonly pull: string;
  readonly operator: string | null;
  /** The recording that is gone on with; null for a new one. */
  readonly before: ToGoOn | null;
  readonly shelf: SpoolShelf;
  /** Seconds without a reading after which the recording is closed. */
  readonly silence_s: number;
  readonly effects: Effects;
  readonly tell: (message: LiveMessage) => void;
}

type State = PullAtRig['state'];

interface Run extends PullRunOptions {
  readonly armedAt: string;
  readonly relays: readonly Relay[];
  readonly begin: () => void;
  readonly closeWires: () => Promise<void>;
  /** The rig is a practice rig, or what comes over its wires says so. */
  isPractice: boolean;
  state: State;
  fault: string | null;
  startedAt: string | null;
  recording: Recording | null;
  /** Settles when a recording that has ended is kept, or is known not to be. */
  finished: Promise<void> | null;
  /** How far the keeping is; null when there is none. */
  keeping: LiveMessage | null;
  /** The last message, once the pull has ended. */
  last: LiveMessage | null;
}

/** Opens the wires of a rig for a pull and listens; nothing is kept before the start. */
export async function startPullRun(options: PullRunOptions): Promise<PullRun> {
  const { wired, cleared, before, effects, tell } = options;
  const wires = await wired.open(cleared.piece, before?.last_s);
  const news = {
    tell,
    rejected: () => run.recording?.rejected(),
    practice: () => {
      run.isPractice = true;
    },
  };
  const run: Run = {
    ...options,
    armedAt: effects.now().toISOString(),
    relays: wires.sources.map((source) => relay(source, news)),
    begin: () => wires.begin?.(),
    closeWires: async () => {
      await Promise.all(run.relays.map((one) => one.close()));
      await wires.close();
    },
    isPractice: wired.isPractice || before?.head.isPractice === true,
    state: 'armed',
    fault: null,
    startedAt: null,
    recording: null,
    finished: null,
    keeping: null,
    last: null,
  };
  try {
    for (const one of run.relays) await one.listen();
  } catch (error) {
    await run.closeWires();
    throw error;
  }
  // One that is gone on with is told when its recording is open, so that a failure leaves nothing told.
  if (before === null) tell(armedMessage(run));
  return {
    facts: () => factsOf(run),
    start: () => start(run),
    mark: (words) => mark(run, words),
    stop: () => stop(run),
    abandon: () => abandon(run),
    kept: (sealed) => kept(run, sealed),
    story: () => storyOf(run),
  };
}

async function start(run: Run): Promise<void> {
  if (run.state !== 'armed')
    throw new InputError('pull/already-started', `Pull ${run.pull} has been started already.`, { pull: run.pull });
  if (run.isPractice) refuseInEarnest(run.cleared.campaign, run.wired.rig);
  run.state = 'running';
  const now = run.effects.now().toISOString();
  run.startedAt = now;
  const { before, shelf } = run;
  const resumeAt = before ? now : null;
  try {
    run.recording = await record({
      watch: { ...watchOptionsOf(run.cleared), silence_s: run.silence_s },
      openKeeper: keepPull({ head: headOf(run), sources: sourcesOf(run), folder: shelf.folder, resumeAt }),
      tell: run.tell,
      onOpen: () => {
        if (before) run.tell(armedMessage(run));
        run.tell({ kind: 'started', pull: run.pull, at: now });
      },
      onClosing: () => {
        run.state = 'sealing';
        tellKeeping(run, 0);
      },
    });
  } catch (error) {
    run.state = 'armed';
    throw error;
  }
  run.begin();
  run.finished = run.recording.ended.then((end) => finish(run, end));
}

function mark(run: Run, words: string): void {
  if (run.state !== 'running' || !run.recording)
    throw new InputError('pull/not-started', `Pull ${run.pull} does not run. A mark is made while it does.`, {
      pull: run.pull,
    });
  const plain = words.replaceAll(/\s+/g, ' ').trim();
  if (plain === '') throw new InputError('pull/mark-empty', 'A mark needs words: say what was seen or heard.');
  run.recording.mark(plain);
}

async function stop(run: Run): Promise<void> {
  if (run.state === 'running') {
    run.recording?.stop();
    return;
  }
  if (run.state !== 'armed') return;
  run.state = 'ended';
  run.last = { kind: 'disarmed', pull: run.pull };
  await run.closeWires();
  run.tell(run.last);
}

async function abandon(run: Run): Promise<void> {
  await run.recording?.abandon();
  await run.closeWires();
  if (run.state === 'sealing') await run.finished;
}

const notKept = { sha256: null, fault: null } as const;

/** The recording goes into the record, and only then is it told as ended. One that fell silent waits for a person to say what it is. */
async function finish(run: Run, end: RecordingEnd): Promise<void> {
  await run.closeWires();
  const { shelf, silence_s, effects } = run;
  const progress = (share: number) => tellKeeping(run, share);
  const recorded = { head: headOf(run), end, isBroken: run.before !== null, silence_s };
  const sealed = { ...notKept, ...end, ...(await keepEnd(recorded, { ...shelf, progress }, effects)) };
  run.fault = sealed.fault;
  run.state = 'ended';
  const { view } = end;
  tellKeeping(run, 1);
  if (run.fault !== null) run.tell({ kind: 'trouble', time_s: view.time_s, words: run.fault });
  const { samples, rejected, sha256 } = sealed;
  run.last = { kind: 'ended', view, samples, rejected, sha256 };
  run.tell(run.last);
}

function tellKeeping(run: Run, share: number): void {
  const message = { kind: 'keeping', share } as const;
  run.keeping = share < 1 ? message : null;
  run.tell(message);
}

function kept(run: Run, sealed: SealedPull | null): void {
  if (run.last?.kind !== 'ended') return;
  const { view, samples, rejected } = run.last;
  run.fault = sealed === null ? 'Nothing was recorded; it was put aside.' : sealed.fault;
  run.last = { kind: 'ended', view, samples, rejected, sha256: sealed?.sha256 ?? null };
  run.tell(run.last);
}

function sourcesOf(run: Run) {
  return run.relays.map(({ source }) => source);
}

function headOf(run: Run): RecordingHead {
  if (run.before) return { ...run.before.head, isPractice: run.isPractice };
  return {
    pull: run.pull,
    campaign: run.cleared.campaign.campaign,
    piece: run.cleared.piece.piece,
    rig: run.wired.rig,
    operator: run.operator,
    source: sourcesOf(run)
      .map(({ describe }) => describe)
      .join(', '),
    isPractice: run.isPractice,
    startedAt: run.startedAt ?? run.armedAt,
  };
}

function armedMessage(run: Run): LiveMessage {
  return {
    kind: 'armed',
    pull: run.pull,
    piece: run.cleared.piece.piece,
    rig: run.wired.rig,
    isPractice: run.isPractice,
    at: run.armedAt,
  };
}

function factsOf(run: Run): PullAtRig {
  const { campaign, piece } = run.cleared;
  return {
    state: run.state,
    pull: run.pull,
    campaign: campaign.campaign,
    piece: piece.piece,
    isPractice: run.isPractice,
    ruleLines: piece.ruleLines,
    tableSpeedLimits_mm_per_min: campaign.tableSpeedLimits_mm_per_min,
    rangeMaximum_kN: campaign.rangeMaximum_kN,
    armedAt: run.armedAt,
    fault: run.fault,
    silence_s: run.silence_s,
  };
}

function storyOf(run: Run): readonly LiveMessage[] {
  if (run.last?.kind === 'disarmed') return [];
  const started: LiveMessage[] = run.startedAt === null ? [] : [{ kind: 'started', pull: run.pull, at: run.startedAt }];
  const end = run.last ?? run.keeping;
  return [armedMessage(run), ...started, ...(run.recording?.story() ?? []), ...(end ? [end] : [])];
}
