import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'node:test';
import { type ArmInput, cautions, type LiveMessage } from '@provinghouse/contract';
import type { WatchSample } from '@provinghouse/core';
import type { RawReading, SourceSink } from '@provinghouse/rig';
import { practicePull } from '@provinghouse/rig/practice';
import { openRecord } from '../../src/index.ts';
import { bringInPractice, openRigDesks, type RigDesks, type WiredRig } from '../../src/pull/index.ts';

/** Samples of one simulated pull, made once for all tests. */
export const simulated = practicePull({ seed: 11, rate_Hz: 100, after_s: 4 });

/**
 * A rig that hands out samples as fast as they are taken; `upTo` stops after the share given, as a wire that falls silent. A pull that is gone on
 * with it takes up a second later.
 */
export function scriptedRig(
  rig: string,
  options: { readonly isPractice?: boolean; readonly upTo?: number } = {},
): WiredRig {
  const samples = simulated.samples.slice(0, Math.floor(simulated.samples.length * (options.upTo ?? 1)));
  return {
    rig,
    describe: 'a script',
    isPractice: options.isPractice ?? true,
    open: async (_, from_s) => {
      const first = from_s === undefined ? 0 : samples.findIndex(({ time_s }) => time_s > from_s + 1);
      let sink: SourceSink | null = null;
      let isStopped = false;
      const pass = (from: number) => {
        if (isStopped || from >= samples.length) return;
        const arrival_s = performance.now() / 1000;
        sink?.readings(samples.slice(from, from + 50).flatMap((sample) => readingsOf(sample, arrival_s)));
        setTimeout(() => pass(from + 50), 1);
      };
      return {
        sources: [
          {
            describe: 'a script',
            clock: 'free',
            start: async (given) => {
              sink = given;
            },
            stop: async () => {
              isStopped = true;
            },
          },
        ],
        begin: () => pass(first < 0 ? samples.length : first),
        close: async () => {
          isStopped = true;
        },
      };
    },
  };
}

function readingsOf({ time_s, force_kN, table_mm }: WatchSample, arrival_s: number): RawReading[] {
  const reading = (channel: string, value: number): RawReading => ({
    channel,
    value,
    time_s,
    arrival_s,
    quality: 'good',
  });
  return [reading('force', force_kN), ...(table_mm === null ? [] : [reading('table', table_mm)])];
}

export function armInput(piece: string, change: Partial<ArmInput> = {}): ArmInput {
  return { campaign: 'PRACTICE', piece, confirmed: piece, operator: null, cautions: [...cautions], ...change };
}

/** A record with the practice campaign and rigs, gone after the test; a program may have worked in it before. */
export async function openBench(t: TestContext, rigs: readonly WiredRig[], before?: string, silence_s?: number) {
  const home = mkdtempSync(join(tmpdir(), 'provinghouse-bench-'));
  if (before !== undefined) spawnSync(process.execPath, [before, home], { stdio: 'inherit' });
  const record = await openRecord({ home });
  await bringInPractice(record.effects);
  const desks = openRigDesks({ rigs, home, ...(silence_s === undefined ? {} : { silence_s }) }, record.effects);
  t.after(async () => {
    await desks.close();
    await record.close();
    rmSync(home, { recursive: true, force: true });
  });
  return { home, desks, effects: record.effects };
}

/** Follows a rig and resolves with all it told, once a message of the kind has come. */
export async function storyUntil(desks: RigDesks, rig: string, kind: LiveMessage['kind']): Promise<LiveMessage[]> {
  const told: LiveMessage[] = [];
  const { promise, resolve } = Promise.withResolvers<void>();
  const leave = await desks.follow(rig, {
    send: (message) => {
      told.push(message);
      if (message.kind === kind) resolve();
    },
    backlog: () => 0,
    drop: () => undefined,
  });
  await promise;
  leave?.();
  return told;
}
