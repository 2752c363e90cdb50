import { join } from 'node:path';
import type { ArmInput, GoOnInput, LiveMessage, PullAtRig, RigDesk } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { type ArmingGround, type Cleared, clearToArm } from './arming.ts';
import { type Audience, audience, type Viewer } from './audience.ts';
import { campaignsAtRig } from './campaign-at-rig.ts';
import { spoolName } from './keeper.ts';
import { nextPullCode } from './pull-row.ts';
import { type PullRun, type PullRunOptions, startPullRun } from './pull-run.ts';
import { describeUnfinished, recordingToGoOn, recoverPull, type SpoolShelf, unfinishedHeads } from './recovery.ts';
import { spoolContents } from './spool-content.ts';
import { silence_s as usualSilence_s } from './watch-options.ts';
import { startWireTest, type WireTest, type WireViewer } from './wire-test.ts';
import type { WiredRig } from './wired-rig.ts';

export interface RigDesksOptions {
  readonly rigs: readonly WiredRig[];
  /** Folder of the record; recordings lie below it until they are sealed, and after. */
  readonly home: string;
  /** A test of the wires ends by itself after so long, s; five minutes. */
  readonly wireTestLimit_s?: number;
  /** A recording is closed after so long without a reading, s; 30. */
  readonly silence_s?: number;
}

/** The rigs of a bench, each with its pull and its viewers. Null means: there is no such rig. */
export interface RigDesks {
  rigs(): Promise<RigDesk[]>;
  desk(rig: string): Promise<RigDesk | null>;
  arm(rig: string, input: ArmInput): Promise<RigDesk | null>;
  start(rig: string): Promise<RigDesk | null>;
  mark(rig: string, words: string): Promise<RigDesk | null>;
  stop(rig: string): Promise<RigDesk | null>;
  /** Seals a recording that waits as it is. */
  recover(rig: string, spool: string): Promise<RigDesk | null>;
  /**
   * Goes on with a recording that waits: the checklist holds again, and the recording runs on at once with its gap marked.
   * @throws InputError `pull/cannot-go-on`, `pull/spool-unknown`, `record/other-wiring`, and whatever keeps a rig from being armed
   */
  goOn(rig: string, input: GoOnInput): Promise<RigDesk | null>;
  follow(rig: string, viewer: Viewer): Promise<(() => void) | null>;
  /**
   * Tests the wires of a rig before any pull, for as long as somebody looks on. A pull that is armed meanwhile takes the wires and ends the test.
   * @throws InputError `pull/wires-taken` while a pull is armed or runs
   */
  testWires(rig: string, viewer: WireViewer): Promise<(() => void) | null>;
  /** Ends nothing and loses nothing: recordings that run are left on disc, to be recovered. */
  close(): Promise<void>;
}

interface Desk {
  readonly wired: WiredRig;
  readonly viewers: Audience;
  run: PullRun | null;
  /** While a pull is being armed or recovered nobody else may begin. */
  isHeld: boolean;
  wireTest: WireTest | null;
}

/** Takes charge of the rigs of a bench. */
export function openRigDesks(options: RigDesksOptions, effects: Effects): RigDesks {
  const { rigs, home, wireTestLimit_s = 300, silence_s = usualSilence_s } = options;
  const folder = join(home, 'spool');
  const desks = new Map<string, Desk>(
    rigs.map((wired) => [wired.rig, { wired, viewers: audience(), run: null, isHeld: false, wireTest: null }]),
  );
  const closing = new AbortController();
  const { signal } = closing;
  const bench: Bench = { desks, folder, home, effects, silence_s, signal, contentOf: spoolContents(signal) };
  const at =
    <A extends unknown[]>(act: (desk: Desk, ...args: A) => Promise<void> | void) =>
    async (rig: string, ...args: A): Promise<RigDesk | null> => {
      const desk = desks.get(rig);
      if (!desk) return null;
      await act(desk, ...args);
      return describeDesk(desk, bench);
    };
  return {
    rigs: () => Promise.all([...desks.values()].map((desk) => describeDesk(desk, bench))),
    desk: at(() => undefined),
    arm: at((desk, input: ArmInput) => arm(desk, input, bench)),
    start: at((desk) => runOf(desk).start()),
    mark: at((desk, words: string) => runOf(desk).mark(words)),
    stop: at((desk) => runOf(desk).stop()),
    recover: at((desk, spool: string) => recover(desk, spool, bench)),
    goOn: at((desk, input: GoOnInput) => goOn(desk, input, bench)),
    follow: async (rig, viewer) => {
      const desk = desks.get(rig);
      return desk ? desk.viewers.join(viewer, desk.run?.story() ?? []) : null;
    },
    testWires: async (rig, viewer) => {
      const desk = desks.get(rig);
      return desk ? testWires(desk, viewer, wireTestLimit_s) : null;
    },
    close: async () => {
      closing.abort(new Error('the program was stopped.'));
      await Promise.all([...desks.values()].map((desk) => desk.wireTest?.end('closed')));
      await Promise.all([...desks.values()].map((desk) => desk.run?.abandon()));
    },
  };
}

interface Bench extends SpoolShelf {
  readonly silence_s: number;
  readonly desks: ReadonlyMap<string, Desk>;
  readonly effects: Effects;
}

function isTaken({ run, isHeld }: Desk): boolean {
  return isHeld || (run !== null && run.facts().state !== 'ended');
}

function runOf({ run, wired }: Desk): PullRun {
  if (run !== null && run.facts().state !== 'ended') return run;
  throw new InputError('pull/not-armed', `No pull is armed on ${wired.rig}. Arm one first.`, { rig: wired.rig });
}

function today({ effects }: Bench): string {
  return effects.now().toISOString().slice(0, 10);
}

async function arm(desk: Desk, input: ArmInput, bench: Bench): Promise<void> {
  await holding(desk, async () => {
    const cleared = clearToArm(input, await groundOf(desk, await unfinishedHeads(bench.folder), bench));
    const pull = await freeCode(cleared, bench);
    desk.run = await openRun(desk, { cleared, pull, operator: input.operator, before: null }, bench);
  });
}

async function goOn(desk: Desk, { spool, confirmed, cautions }: GoOnInput, bench: Bench): Promise<void> {
  await holding(desk, async () => {
    const before = await recordingToGoOn({ rig: desk.wired.rig, spool }, bench, bench.effects);
    const { campaign, piece, operator, pull } = before.head;
    const others = (await unfinishedHeads(bench.folder)).filter((head) => spoolName(head) !== spool);
    const ground = await groundOf(desk, others, bench);
    const cleared = clearToArm({ campaign, piece, confirmed, operator, cautions }, ground);
    const run = await openRun(desk, { cleared, pull, operator, before }, bench);
    try {
      await run.start();
    } catch (error) {
      await run.abandon();
      throw error;
    }
    desk.run = run;
  });
}

async function openRun(
  { wired, viewers, wireTest }: Desk,
  what: Pick<PullRunOptions, 'cleared' | 'pull' | 'operator' | 'before'>,
  bench: Bench,
): Promise<PullRun> {
  // Whoever arms a pull has the wires, and a test left open somewhere must not stand in the way.
  await wireTest?.end('pull');
  const tell = (message: LiveMessage) => viewers.tell(message);
  const { silence_s, effects } = bench;
  return startPullRun({ ...what, wired, shelf: bench, silence_s, effects, tell });
}

async function groundOf({ wired }: Desk, waiting: readonly PieceCode[], bench: Bench): Promise<ArmingGround> {
  return {
    rig: wired.rig,
    isPractice: wired.isPractice,
    fixtureLimit_kN: wired.fixtureLimit_kN ?? null,
    agreedDrop: wired.agreedDrop ?? null,
    campaigns: await campaignsAtRig(wired.rig, today(bench), bench.effects),
    piecesTaken: piecesTaken(waiting, bench),
  };
}

interface PieceCode {
  readonly campaign: string;
  readonly piece: string;
}

function testWires(desk: Desk, viewer: WireViewer, limit_s: number): () => void {
  if (isTaken(desk)) {
    const pull = desk.run?.facts().pull ?? null;
    const by = desk.isHeld || pull === null ? 'a pull that is being armed' : `pull ${pull}`;
    throw new InputError(
      'pull/wires-taken',
      `The wires of ${desk.wired.rig} are taken by ${by}. They can be tested once it has ended.`,
      { pull },
    );
  }
  if (desk.wireTest === null || desk.wireTest.isOver()) {
    const after = desk.wireTest?.end('closed');
    desk.wireTest = startWireTest({ wired: desk.wired, after, limit_s });
  }
  return desk.wireTest.join(viewer);
}

/** Holds a rig while somebody begins something on it; a second one who comes meanwhile is refused. */
async function holding(desk: Desk, work: () => Promise<void>): Promise<void> {
  if (desk.isHeld || isTaken(desk)) {
    const pull = desk.run?.facts().pull ?? null;
    const by = pull === null ? 'somebody who is arming it now' : `pull ${pull}`;
    throw new InputError('pull/rig-busy', `${desk.wired.rig} is taken by ${by}. End it first.`, { pull });
  }
  desk.isHeld = true;
  try {
    await work();
  } finally {
    desk.isHeld = false;
  }
}

/** Pieces under way on a rig, or in a recording that waits to be recovered. */
function piecesTaken(waiting: readonly PieceCode[], { desks }: Bench): string[] {
  const running = [...desks.values()].flatMap(({ run }) => (run ? [run.facts()] : []));
  const active = running.filter(({ state }) => state !== 'ended');
  return [...active, ...waiting].map(({ campaign, piece }) => `${campaign}/${piece}`);
}

/** A code no pull of the campaign has, neither in the record nor on another rig nor in a recording that waits to be recovered. */
async function freeCode({ campaign: { campaign } }: Cleared, { desks, folder, effects }: Bench): Promise<string> {
  const { pulls } = await campaignRows(effects.store, campaign);
  const running = [...desks.values()].flatMap(({ run }) => (run ? [run.facts()] : []));
  const taken = [...running, ...(await unfinishedHeads(folder))].filter((one) => one.campaign === campaign);
  return nextPullCode(
    pulls,
    taken.map(({ pull }) => pull),
  );
}

async function recover(desk: Desk, spool: string, bench: Bench): Promise<void> {
  const { wired, viewers, run } = desk;
  const progress = (share: number) => viewers.tell({ kind: 'keeping', share });
  await holding(desk, async () => {
    progress(0);
    try {
      const sealed = await recoverPull({ rig: wired.rig, spool, progress }, bench, bench.effects);
      if (run && spoolName(run.facts()) === spool) run.kept(sealed);
    } finally {
      progress(1);
    }
  });
}

async function describeDesk({ wired, run }: Desk, bench: Bench): Promise<RigDesk> {
  const facts: PullAtRig | null = run?.facts() ?? null;
  const active = facts !== null && facts.state !== 'ended' ? spoolName(facts) : null;
  const heads = await unfinishedHeads(bench.folder);
  const waiting = heads.filter((head) => head.rig === wired.rig && spoolName(head) !== active);
  return {
    rig: wired.rig,
    source: wired.describe,
    isPractice: wired.isPractice,
    fixtureLimit_kN: wired.fixtureLimit_kN ?? null,
    agreedDrop: wired.agreedDrop ?? null,
    campaigns: await campaignsAtRig(wired.rig, today(bench), bench.effects),
    pull: facts,
    unfinished: await Promise.all(waiting.map((head) => describeUnfinished(head, bench))),
  };
}
