import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { cautions } from '@provinghouse/contract';
import { openRecord } from '@provinghouse/service';
import { bringInPractice, practiceRigCode } from '@provinghouse/service/pull';
import { attachments, campaignRows, readBlob, verifyLedger } from '@provinghouse/store';
import { random, type Sent, trialRig } from '../../rig/test/spool/trial-rig.ts';
import { type DeskClient, startDesk } from './desk-client.ts';

/** What is done with the recording after the desk was killed. */
export type DeskWay =
  | 'kept as it is'
  | 'gone on with'
  | 'gone on with, killed again'
  | 'killed while kept'
  | 'disc full';

export interface DeskTrialOptions {
  readonly seed: number;
  readonly way: DeskWay;
  /** An empty folder of its own; for a full disc its folder `spool` is a small file system with a file `ballast`. */
  readonly home: string;
}

export interface DeskTrialResult {
  readonly way: DeskWay;
  readonly killedAt_s: number;
  readonly rows: number;
  /** From the last reading kept to the kill, each time. */
  readonly lost_ms: readonly number[];
  readonly missingInside: number;
  readonly unmarked: number;
  readonly corrupt: number;
  readonly shownNotKept: number;
  /** Times the record was broken off and gone on with, marked as such in the file. */
  readonly gapsMarked: number;
  readonly isSha256True: boolean;
  readonly isLedgerWhole: boolean;
  readonly isDiscTroubleSaid: boolean;
}

const piece = 'PRACTICE-8-1';
const spool = 'PRACTICE.P-001';

async function prepare(home: string, port: number): Promise<void> {
  mkdirSync(join(home, 'kit'), { recursive: true });
  const source = { kind: 'tcp lines', host: '127.0.0.1', port, pattern: '{time[s]} {force[kN]} {table[mm]}' };
  writeFileSync(join(home, 'kit', `${practiceRigCode}.json`), JSON.stringify({ sources: [source] }));
  const record = await openRecord({ home });
  await bringInPractice(record.effects);
  await record.close();
}

async function shownFrom(desk: DeskClient, least_kN: number): Promise<void> {
  while (desk.shown_kN() <= least_kN) await setTimeout(5);
}

/** Waits until a pull that was ended is in the record. */
async function untilKept(desk: DeskClient): Promise<void> {
  for (;;) {
    const { pull } = await desk.desk();
    if (pull?.state === 'ended') return assert.equal(pull.fault, null);
    await setTimeout(20);
  }
}

interface Read {
  readonly numbers: readonly number[];
  readonly corrupt: number;
  readonly gaps: readonly { readonly from_s: number; readonly to_s: number; readonly why: string }[];
  readonly times_s: readonly number[];
  readonly isSha256True: boolean;
  readonly isLedgerWhole: boolean;
}

/** What the record holds of the pull, read as somebody would who was given the file. */
async function readBack(home: string, sent: ReadonlyMap<number, Sent>): Promise<Read> {
  const { effects, close } = await openRecord({ home });
  try {
    const { pulls } = await campaignRows(effects.store, 'PRACTICE');
    assert.equal(pulls.length, 1);
    const file = (await attachments(effects.store, 'PRACTICE')).find(({ path }) => path === pulls[0]?.trace);
    const bytes = await readBlob(effects.store, file?.sha256 ?? '');
    const text = new TextDecoder().decode(bytes);
    const head = text.split('\n').filter((line) => line.startsWith('#'));
    const readings = text.slice(head.reduce((length, line) => length + line.length + 1, 0));
    const rows = readings
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(',').map(Number));
    const numbers = rows.map(([, force_kN = 0]) => Math.round(1000 * force_kN));
    const corrupt = rows.filter(([time_s = 0, force_kN, table_mm], i) => {
      const k = numbers[i] ?? 0;
      const isTrue = force_kN === k / 1000 && table_mm === k / 500 && sent.has(k);
      const isInOrder = i === 0 || (k > (numbers[i - 1] ?? 0) && time_s >= (rows[i - 1]?.[0] ?? 0));
      return !(isTrue && isInOrder);
    }).length;
    const said = /^# SHA-256 of the readings ([0-9a-f]{64})$/m.exec(text)?.[1];
    const gaps = head.flatMap((line) => {
      const [, from, to, why = ''] = /Gap from ([\d.]+) s to ([\d.]+) s: (.*)\.$/.exec(line) ?? [];
      return from === undefined ? [] : [{ from_s: Number(from), to_s: Number(to), why }];
    });
    return {
      numbers,
      corrupt,
      gaps,
      times_s: rows.map(([time_s = 0]) => time_s),
      isSha256True:
        said === createHash('sha256').update(readings).digest('hex') &&
        file?.sha256 === createHash('sha256').update(bytes).digest('hex'),
      isLedgerWhole: (await verifyLedger(effects.store, 'PRACTICE')).ok,
    };
  } finally {
    await close();
  }
}

/** Lines sent to a desk that listened, between two that were kept, and not in the record; and those of them that no gap covers. */
function missingOf({ numbers, times_s, gaps }: Read, sent: ReadonlyMap<number, Sent>) {
  let missing = 0;
  let unmarked = 0;
  numbers.forEach((k, i) => {
    const before = numbers[i - 1];
    if (before === undefined || k === before + 1) return;
    const lost = Array.from({ length: k - before - 1 }, (_, j) => before + 1 + j).filter((one) => sent.has(one)).length;
    missing += lost;
    const [from_s, to_s] = [times_s[i - 1] ?? 0, times_s[i] ?? 0];
    // Gaps are told to the millisecond.
    if (!gaps.some((gap) => gap.from_s <= from_s + 1e-3 && gap.to_s >= to_s - 1e-3)) unmarked += lost;
  });
  return { missing, unmarked };
}

/** Kills a whole desk with SIGKILL at a random moment of a pull, starts it again, and brings the recording into the record by the way given. */
export async function deskTrial({ seed, way, home }: DeskTrialOptions): Promise<DeskTrialResult> {
  const draw = random(seed);
  const wire = await trialRig({ mishap: 'none' }, draw);
  await prepare(home, wire.port);
  const kills_ms: number[] = [];
  const shown_kN: number[] = [];
  const troubles: string[] = [];
  let desk = await startDesk(home, practiceRigCode);
  const again = async () => {
    kills_ms.push(await desk.kill());
    shown_kN.push(desk.shown_kN());
    troubles.push(...desk.troubles());
    if (way === 'disc full') rmSync(join(home, 'spool', 'ballast'), { force: true });
    desk = await startDesk(home, practiceRigCode);
  };
  const goOn = () => desk.post('go-on', { spool, confirmed: piece, cautions });
  const arming = { campaign: 'PRACTICE', piece, confirmed: piece, operator: null, cautions };
  await desk.post('arm', arming);
  await desk.post('start', {});
  const began_ms = performance.now();
  await shownFrom(desk, 0.4);
  await setTimeout((way === 'disc full' ? 1500 : 0) + 800 * draw());
  await again();
  if (way.startsWith('gone on with')) {
    await goOn();
    await shownFrom(desk, shown_kN[0] ?? 0);
    await setTimeout(400 * draw());
    if (way === 'gone on with, killed again') {
      await again();
      await goOn();
      await shownFrom(desk, shown_kN[1] ?? 0);
    }
    await desk.post('stop', {});
    await untilKept(desk);
  } else {
    if (way === 'killed while kept') {
      void desk.post('recover', { spool }).catch(() => undefined);
      await setTimeout(700 * draw());
      await desk.kill();
      desk = await startDesk(home, practiceRigCode);
    }
    if ((await desk.desk()).unfinished.length > 0) await desk.post('recover', { spool });
  }
  shown_kN.push(desk.shown_kN());
  assert.deepEqual((await desk.desk()).unfinished, []);
  await desk.kill();
  wire.stop();
  const read = await readBack(home, wire.sent);
  const { missing, unmarked } = missingOf(read, wire.sent);
  const lastBefore = (at_ms: number) => read.numbers.findLast((k) => (wire.sent.get(k)?.at_ms ?? at_ms) < at_ms) ?? 0;
  const last = read.numbers.at(-1) ?? 0;
  return {
    way,
    killedAt_s: ((kills_ms[0] ?? began_ms) - began_ms) / 1000,
    rows: read.numbers.length,
    lost_ms: kills_ms.map((at_ms) => at_ms - (wire.sent.get(lastBefore(at_ms))?.at_ms ?? at_ms)),
    missingInside: missing,
    unmarked,
    corrupt: read.corrupt,
    shownNotKept: shown_kN.filter((force_kN) => Math.round(1000 * force_kN) > last).length,
    gapsMarked: read.gaps.filter(({ why }) => why.includes('broke off')).length,
    isSha256True: read.isSha256True,
    isLedgerWhole: read.isLedgerWhole,
    isDiscTroubleSaid: troubles.some((words) => words.includes('disc is full')),
  };
}
