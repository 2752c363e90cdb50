import { join } from 'node:path';
import type { ArmInput, LiveMessage, PullAtRig, RigDesk } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { type Cleared, clearToArm } from './arming.ts';
import { type Audience, audience, type Viewer } from './audience.ts';
import { campaignsAtRig } from './campaign-at-rig.ts';
import { spoolName } from './keeper.ts';
import { nextPullCode } from './pull-row.ts';
import { type PullRun, startPullRun } from './pull-run.ts';
import { describeUnfinished, recoverPull, unfinishedHeads } from './recovery.ts';
import type { WiredRig } from './wired-rig.ts';

export interface RigDesksOptions {
  readonly rigs: readonly WiredRig[];
  /** Folder of the record; recordings lie below it until they are sealed, and after. */
  readonly home: string;
}

/** The rigs of a bench, each with its pull and its viewers. Null means: there is no such rig. */
export interface RigDesks {
  rigs(): Promise<RigDesk[]>;
  desk(rig: string): Promise<RigDesk | null>;
  arm(rig: string, input: ArmInput): Promise<RigDesk | null>;
  start(rig: string): Promise<RigDesk | null>;
  mark(rig: string, words: string): Promise<RigDesk | null>;
  stop(rig: string): Promise<RigDesk | null>;
  recover(rig: string, spool: string): Promise<RigDesk | null>;
  follow(rig: string, viewer: Viewer): Promise<(() => void) | null>;
  /** Ends nothing and loses nothing: recordings that run are left on disc, to be recovered. */
  close(): Promise<void>;
}

interface Desk {
  readonly wired: WiredRig;
  readonly viewers: Audience;
  run: PullRun | null;
  /** While a pull is being armed or recovered nobody else may begin. */
  isHeld: boolean;
}

/** Takes charge of the rigs of a bench. */
export function openRigDesks({ rigs, home }: RigDesksOptions, effects: Effects): RigDesks {
  const folder = join(home, 'spool');
  const desks = new Map<string, Desk>(
    rigs.map((wired) => [wired.rig, { wired, viewers: audience(), run: null, isHeld: false }]),
  );
  const bench: Bench = { desks, folder, effects };
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
    follow: async (rig, viewer) => {
      const desk = desks.get(rig);
      return desk ? desk.viewers.join(viewer, desk.run?.story() ?? []) : null;
    },
    close: async () => {
      await Promise.all([...desks.values()].map((desk) => desk.run?.abandon()));
    },
  };
}

interface Bench {
  readonly desks: ReadonlyMap<string, Desk>;
  readonly folder: string;
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
    const { wired, viewers } = desk;
    const campaigns = await campaignsAtRig(wired.rig, today(bench), bench.effects);
    const cleared = clearToArm(input, {
      rig: wired.rig,
      isPractice: wired.isPractice,
      campaigns,
      piecesTaken: await piecesTaken(bench),
    });
    const pull = await freeCode(cleared, bench);
    desk.run = await startPullRun({
      wired,
      cleared,
      pull,
      operator: input.operator,
      folder: bench.folder,
      effects: bench.effects,
      tell: (message: LiveMessage) => viewers.tell(message),
    });
  });
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
async function piecesTaken({ desks, folder }: Bench): Promise<string[]> {
  const running = [...desks.values()].flatMap(({ run }) => (run ? [run.facts()] : []));
  const active = running.filter(({ state }) => state !== 'ended');
  return [...active, ...(await unfinishedHeads(folder))].map(({ campaign, piece }) => `${campaign}/${piece}`);
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

async function recover(desk: Desk, spool: string, { folder, effects }: Bench): Promise<void> {
  await holding(desk, () => recoverPull({ rig: desk.wired.rig, spool, folder }, effects));
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
    campaigns: await campaignsAtRig(wired.rig, today(bench), bench.effects),
    pull: facts,
    unfinished: await Promise.all(waiting.map((head) => describeUnfinished(bench.folder, head))),
  };
}
