import assert from 'node:assert/strict';
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { after } from 'node:test';
import type { WatchSample } from '@provinghouse/core';
import {
  isPracticeLine,
  type PracticeWire,
  practicePull,
  type ServePracticeOptions,
  servePractice,
} from '../../src/practice/index.ts';

/** One link, pulled briskly: some twenty seconds. */
export const ductile = {
  seed: 3,
  chain: { links: 1 },
  valve: { approach_mm_per_min: 150, takeUp_mm_per_min: 14, main_mm_per_min: 28, idle_s: 0.5 },
} as const;
export const inHurry = { speed: 'as fast as it is read' } as const;

const laid: PracticeWire[] = [];
/** Serves a practice pull, and takes it down after the tests of the file. */
export async function lay(options: ServePracticeOptions): Promise<PracticeWire> {
  const wire = await servePractice(options);
  laid.push(wire);
  return wire;
}
after(async () => {
  for (const wire of laid) await wire.stop();
});

/** What the wire must have carried: a pull made without any wire, from the same seed. */
export function expected(options: ServePracticeOptions, made: number): readonly WatchSample[] {
  const { samples } = practicePull({ ...options, after_s: (options.after_s ?? 2) + 1 });
  assert.ok(made > 10 * (options.rate_Hz ?? 100) && made <= samples.length);
  return samples.slice(0, made);
}

function numbersOf(line: string): number[] {
  return line.split(' ').flatMap((word, i) => (i % 2 === 1 ? [Number(word)] : []));
}

function sampleOf(line: string): WatchSample {
  assert.match(line, /^F -?[\d.]+ T [\d.]+ X -?[\d.]+ E -?[\d.]+$/);
  const [force_kN = 0, time_s = 0, table_mm = 0, extension_mm = 0] = numbersOf(line);
  // A display shows -0.00 for a value just below zero; it is zero.
  return { time_s, force_kN: force_kN + 0, table_mm: table_mm + 0, extension_mm: extension_mm + 0 };
}

function withoutMinusZero(sample: WatchSample): WatchSample {
  return {
    time_s: sample.time_s,
    force_kN: sample.force_kN + 0,
    table_mm: (sample.table_mm ?? Number.NaN) + 0,
    extension_mm: sample.extension_mm === null ? null : sample.extension_mm + 0,
  };
}

/** A reader of a TCP wire. */
export const dial = (wire: PracticeWire): Socket => connect(wire.port ?? 0, '127.0.0.1');

/** All that comes until the wire is closed. */
export async function collected(socket: Socket): Promise<string> {
  const chunks: Buffer[] = [];
  socket.on('data', (chunk) => chunks.push(chunk));
  await once(socket, 'end');
  return Buffer.concat(chunks).toString();
}

/** That the lines are the pull of these options as far as it was made, whole and in order, marked as practice. */
export function assertLines(text: string, options: ServePracticeOptions, made: number): void {
  const lines = text.trim().split(/\r?\n/);
  assert.ok(isPracticeLine(lines[0] ?? '') && isPracticeLine(lines.at(-1) ?? ''), 'marked first and last');
  const data = lines.filter((line) => !isPracticeLine(line));
  assert.ok(lines.length - data.length > 3, 'and again on the way');
  const due = expected(options, made);
  assert.equal(data.length, due.length);
  for (const [i, line] of data.entries()) {
    const sample = due[i];
    assert.ok(sample);
    assert.deepEqual(sampleOf(line), withoutMinusZero(sample));
  }
}
