import type { LiveMessage, PullAtRig } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import type { Effects } from '../effects.ts';
import { type Cleared, refuseInEarnest } from './arming.ts';
import { keepPull } from './keeper.ts';
import type { RecordingHead } from './ports.ts';
import { type Recording, type RecordingEnd, record } from './recording.ts';
import { type Relay, relay } from './relay.ts';
import { sealPull } from './seal-pull.ts';
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
  story(): readonly LiveMessage[];
}

export interface PullRunOptions {
  readonly wired: WiredRig;
  readonly cleared: Cleared;
  readonly pull: string;
  readonly operator: string | null;
  /** Folder of the recordings. */
  readonly folder: string;
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
  /** The last message, once the pull has ended. */
  last: LiveMessage | null;
}

/** Opens the wires of a rig for a pull and listens; nothing is kept before the start. */
export async function startPullRun(options: PullRunOptions): Promise<PullRun> {
  const { wired, cleared, effects, tell } = options;
  const wires = await wired.open(cleared.piece);
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
    isPractice: wired.isPractice,
    state: 'armed',
    fault: null,
    startedAt: null,
    recording: null,
    last: null,
  };
  try {
    for (const one of run.relays) await one.listen();
  } catch (error) {
    await run.closeWires();
    throw error;
  }
  tell(armedMessage(run));
  return {
    facts: () => factsOf(run),
    start: () => start(run),
    mark: (words) => mark(run, words),
    stop: () => stop(run),
    abandon: async () => {
      await run.recording?.abandon();
      await run.closeWires();
    },
    story: () => storyOf(run),
  };
}

async function start(run: Run): Promise<void> {
  if (run.state !== 'armed')
    throw new InputError('pull/already-started', `Pull ${run.pull} has been started already.`, { pull: run.pull });
  if (run.isPractice) refuseInEarnest(run.cleared.campaign, run.wired.rig);
  run.state = 'running';
  run.startedAt = run.effects.now().toISOString();
  try {
    run.recording = await record({
      watch: watchOptionsOf(run.cleared),
      openKeeper: keepPull({ head: () => headOf(run), sources: sourcesOf(run), folder: run.folder }),
      tell: run.tell,
      onClosing: () => {
        run.state = 'sealing';
      },
    });
  } catch (error) {
    run.state = 'armed';
    throw error;
  }
  run.tell({ kind: 'started', pull: run.pull, at: run.startedAt });
  run.begin();
  void run.recording.ended.then((end) => finish(run, end));
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

const endWords = {
  parted: 'parting',
  'agreed drop': 'the agreed drop of force',
  operator: 'the operator',
  silence: 'silence of the rig',
} as const;

/** The recording goes into the record, and only then is it told as ended. */
async function finish(run: Run, end: RecordingEnd): Promise<void> {
  const { view, sealed } = end;
  await run.closeWires();
  run.fault = await keepEnd(run, end);
  run.state = 'ended';
  if (run.fault !== null) run.tell({ kind: 'trouble', time_s: view.time_s, words: run.fault });
  const counts = sealed instanceof Error ? { samples: 0, rejected: 0 } : sealed;
  const sha256 = run.fault === null && !(sealed instanceof Error) ? sealed.sha256 : null;
  run.last = { kind: 'ended', view, samples: counts.samples, rejected: counts.rejected, sha256 };
  run.tell(run.last);
}

/** Writes the end into the record; gives what kept it from that, null when nothing did. */
async function keepEnd(run: Run, { view, sealed, marks }: RecordingEnd): Promise<string | null> {
  if (sealed instanceof Error) return `It could not be sealed: ${sealed.message} What was written lies on disc.`;
  const words = view.ended === 'parted' ? [] : [`Ended by ${endWords[view.ended ?? 'operator']}.`];
  try {
    return await sealPull({ head: headOf(run), sealed, marks, words, folder: run.folder }, run.effects);
  } catch (error) {
    return `It lies on disc and can be recovered; it could not be written into the record: ${wordsOf(error)}`;
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function sourcesOf(run: Run) {
  return run.relays.map(({ source }) => source);
}

function headOf(run: Run): RecordingHead {
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
  };
}

function storyOf(run: Run): readonly LiveMessage[] {
  if (run.last?.kind === 'disarmed') return [];
  const started: LiveMessage[] = run.startedAt === null ? [] : [{ kind: 'started', pull: run.pull, at: run.startedAt }];
  return [armedMessage(run), ...started, ...(run.recording?.story() ?? []), ...(run.last ? [run.last] : [])];
}
