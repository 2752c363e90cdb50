import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { type Gap, type Recovery, recover, sealSpool, startRecord, tcpLines } from '../../src/index.ts';
import { type Mishap, random, type Sent, trialRig } from './trial-rig.ts';

export interface TrialOptions {
  readonly seed: number;
  readonly mishap: Mishap;
  /** Where the spool lies; for a full disc a small file system with a file `ballast` that is removed to free it. */
  readonly folder: string;
  /** Longest time from the end of the mishap to the kill; 600 ms, or 1200 where there is none. */
  readonly longest_ms?: number;
}

export interface TrialResult {
  readonly mishap: Mishap;
  /** Into the pull, seconds. */
  readonly killedAt_s: number;
  readonly sent: number;
  readonly kept: number;
  /** From the last reading kept to the kill. */
  readonly lostAtEnd_ms: number;
  /** Lines sent to a connected recorder before the last kept, and not in the record. */
  readonly missingInside: number;
  readonly unmarked: number;
  /** Readings kept whose value was never sent, or out of order. */
  readonly corrupt: number;
  /** Readings shown on screen and then not in the record. */
  readonly shownNotKept: number;
  readonly isDiscTroubleSaid: boolean;
  readonly tornBytes: number;
}

function lineNumbers(recovery: Recovery): number[] {
  return [...recovery.columns.force_kN].map((force) => Math.round(force * 1000));
}

function corruptCount(recovery: Recovery, numbers: readonly number[], sent: ReadonlyMap<number, Sent>): number {
  const { force_kN, table_mm, time_s } = recovery.columns;
  return numbers.filter((k, i) => {
    const isTrue = force_kN[i] === k / 1000 && table_mm[i] === k / 500 && sent.get(k)?.isGarbled === false;
    const isInOrder = i === 0 || (k > (numbers[i - 1] ?? 0) && (time_s[i] ?? 0) >= (time_s[i - 1] ?? 0));
    return !(isTrue && isInOrder);
  }).length;
}

/** Whether a gap lies between the readings on both sides of what is missing. */
function isInGap(k: number, numbers: readonly number[], recovery: Recovery): boolean {
  const after = numbers.findIndex((number) => number > k);
  const from_s = recovery.columns.time_s[after - 1] ?? 0;
  const to_s = recovery.columns.time_s[after] ?? 0;
  return recovery.gaps.some((gap: Gap) => gap.from_s <= from_s + 1e-6 && gap.to_s >= to_s - 1e-6);
}

/** Goes on with the record from the same rig, then seals it; every law of a record must hold for it. */
async function resumeAndSeal(path: string, port: number, before: Recovery): Promise<void> {
  const source = tcpLines({
    host: '127.0.0.1',
    port,
    pattern: '{time[s]} {force[kN]} {table[mm]}',
    decimal: '.',
    channels: [],
  });
  const { header } = before;
  assert.ok(header);
  const record = await startRecord({
    path,
    header,
    sources: [source],
    listener: { samples: () => {}, trouble: () => {} },
    resumeAt: new Date().toISOString(),
  });
  await setTimeout(60);
  await record.stop('enough');
  const after = await recover(path);
  const marked = after.gaps.filter(({ why }) => why.includes('broke off'));
  assert.equal(after.resumed, 1);
  assert.ok(after.isClosed);
  assert.equal(after.tornBytes, 0);
  assert.equal(marked.length, 1);
  assert.equal(marked[0]?.from_s, before.columns.time_s.at(-1) ?? 0);
  // Not beside the spool: that disc may be too small for both.
  const tracePath = join(tmpdir(), `${basename(path)}.${process.pid}.csv`);
  const sealed = await sealSpool(path, tracePath);
  assert.equal(sealed.sha256, createHash('sha256').update(readFileSync(tracePath)).digest('hex'));
  assert.equal(sealed.samples, after.columns.time_s.length);
  rmSync(tracePath);
}

/** Records a pull in a process of its own, kills it with SIGKILL at a random moment, and compares what was sent with what is kept. */
export async function killTrial(options: TrialOptions): Promise<TrialResult> {
  const { mishap, folder, seed } = options;
  const draw = random(seed);
  const isDisc = mishap.startsWith('disc full');
  const path = join(folder, `trial-${seed}.spool`);
  const wire = await trialRig(options, draw);
  const recorder = fileURLToPath(new URL('./kill-recorder.ts', import.meta.url));
  const child = spawn(process.execPath, [recorder, String(wire.port), path], { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = once(child, 'exit');
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const shownAt = () => said.lastIndexOf('shown ');
  while (shownAt() < 0) await setTimeout(2);
  const later_ms = mishap === 'none' ? 50 : isDisc ? 1500 : wire.mishapEnd_ms - 150;
  const killAfter_ms = later_ms + draw() * (options.longest_ms ?? (mishap === 'none' ? 1200 : 600));
  if (mishap === 'disc full, then freed') {
    await setTimeout(killAfter_ms);
    rmSync(join(folder, 'ballast'));
    await setTimeout(400);
  } else await setTimeout(killAfter_ms);
  const killed_ms = performance.now();
  child.kill('SIGKILL');
  await gone;
  const sent = new Map([...wire.sent].filter(([, { at_ms }]) => at_ms <= killed_ms));
  const recovery = await recover(path);
  const numbers = lineNumbers(recovery);
  const lastKept = numbers.at(-1) ?? -1;
  const kept = new Set(numbers);
  const missing = [...sent].filter(([k]) => k < lastKept && k > (numbers[0] ?? 0) && !kept.has(k));
  const garbled = missing.filter(([, { isGarbled }]) => isGarbled).length;
  const unmarked = missing.filter(([k, { isGarbled }]) => !isGarbled && !isInGap(k, numbers, recovery)).length;
  const shown = Math.round(1000 * Number(/shown (\S+)\n(?!.*shown)/s.exec(said)?.[1] ?? 0));
  assert.equal(recovery.isClosed, false);
  assert.ok(recovery.notes.some((note) => note.includes('breaks off')));
  if (mishap !== 'disc full') await resumeAndSeal(path, wire.port, recovery);
  wire.stop();
  rmSync(path);
  if (isDisc) writeFileSync(join(folder, 'ballast'), '');
  return {
    mishap,
    killedAt_s: (killed_ms - (wire.began_ms() ?? killed_ms)) / 1000,
    sent: sent.size,
    kept: kept.size,
    lostAtEnd_ms: killed_ms - (wire.sent.get(lastKept)?.at_ms ?? killed_ms),
    missingInside: missing.length,
    unmarked: unmarked + Math.max(0, garbled - recovery.rejected),
    corrupt: corruptCount(recovery, numbers, wire.sent),
    shownNotKept: Math.max(0, shown - lastKept),
    isDiscTroubleSaid: said.includes('trouble The disc is full'),
    tornBytes: recovery.tornBytes,
  };
}
