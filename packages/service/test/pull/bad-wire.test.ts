import assert from 'node:assert/strict';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { describe, type TestContext, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import type { LiveMessage } from '@provinghouse/contract';
import { openSource, sourceConfiguration } from '@provinghouse/rig';
import { campaignRows } from '@provinghouse/store';
import type { WiredRig } from '../../src/pull/index.ts';
import { armInput, openBench, storyUntil } from './bench.ts';

const rig = 'PRACTICE-RIG';

interface Panel {
  /** The line for the force at a moment, in kN. */
  readonly line: (force_kN: number, i: number) => string | Uint8Array;
  readonly pattern?: string;
}

/** A panel that climbs to 30 kN in four seconds and stays there, a hundred lines a second. */
async function benchWith(t: TestContext, { line, pattern = 'F {force[kN]}' }: Panel) {
  const server = createServer((socket) => {
    let i = 0;
    const timer = setInterval(() => {
      const force_kN = Math.min(i * 0.075, 30) + 0.02 * Math.sin(i);
      socket.write(line(force_kN, i++));
    }, 10);
    socket.on('error', () => undefined);
    socket.on('close', () => clearInterval(timer));
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  t.after(() => server.close());
  const address = server.address();
  assert.ok(typeof address === 'object' && address);
  const configuration = sourceConfiguration({ kind: 'tcp lines', host: '127.0.0.1', port: address.port, pattern });
  const wired: WiredRig = {
    rig,
    describe: 'a panel',
    isPractice: true,
    open: async () => ({ sources: [openSource(configuration)], close: async () => undefined }),
  };
  return openBench(t, [wired]);
}

/** What the screen of the rig is told until some trouble reads so, the pull being armed and started. */
async function troubleAtRig(t: TestContext, panel: Panel, expected: RegExp) {
  const { desks, effects } = await benchWith(t, panel);
  const { promise: found, resolve } = Promise.withResolvers<void>();
  const told: LiveMessage[] = [];
  await desks.follow(rig, {
    send: (message) => {
      told.push(message);
      if (message.kind === 'trouble' && expected.test(message.words)) resolve();
    },
    backlog: () => 0,
    drop: () => undefined,
  });
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  await found;
  await desks.stop(rig);
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  return { told, end, desk: await desks.desk(rig), pulls: (await campaignRows(effects.store, 'PRACTICE')).pulls };
}

const force = (force_kN: number) => `F ${force_kN.toFixed(2)}\n`;

const troubles: readonly [string, Panel, RegExp][] = [
  ['a wrong pattern', { line: force, pattern: 'LOAD {force[kN]}' }, /could not be read with "LOAD \{force\[kN\]\}"/],
  [
    'a wrong baud rate',
    { line: (_, i) => Uint8Array.from({ length: 40 }, (_v, k) => (k === 39 ? 10 : 128 + ((i * 7 + k * 13) % 120))) },
    /no plain text.*baud/,
  ],
  ['a swapped sign', { line: (kN) => force(-kN) }, /stays below zero.*sign/],
  ['a sign that turns over in mid-pull', { line: (kN, i) => force(i < 200 ? kN : -kN) }, /at once: sign turned over\?/],
  [
    'a panel switched from kN to kgf in mid-pull',
    { line: (kN, i) => force(i < 200 ? kN : kN * 101.971621) },
    /switched from kN to kgf/,
  ],
  ['a value that sticks', { line: (kN, i) => force(i < 200 ? kN : 15) }, /stood at exactly 15 kN.*stuck\?/],
];

describe('told at the rig while the pull runs', { concurrency: true, timeout: 60_000 }, () => {
  for (const [what, panel, expected] of troubles)
    test(what, async (t) => {
      const { end } = await troubleAtRig(t, panel, expected);
      assert.equal(end?.kind, 'ended');
    });
});

test('NaN text in place of a force is never a reading: it is counted, kept, and the pull goes on', async (t) => {
  const { desks } = await benchWith(t, { line: (kN, i) => (i % 10 === 0 ? 'F NaN\n' : force(kN)) });
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await desks.start(rig);
  await setTimeout(2500);
  await desks.stop(rig);
  const told = await storyUntil(desks, rig, 'ended');
  const end = told.at(-1);
  assert.ok(end?.kind === 'ended' && end.rejected > 10 && end.samples > 5 * end.rejected, JSON.stringify(end));
  const samples = told.flatMap((message) => (message.kind === 'samples' ? message.samples : []));
  assert.ok(samples.length > 0 && samples.every(({ force_kN }) => Number.isFinite(force_kN)));
});

test('where nothing could be read the piece counts as not pulled, and may be pulled', async (t) => {
  const { desk, pulls } = await troubleAtRig(t, { line: force, pattern: 'LOAD {force[kN]}' }, /could not be read/);
  assert.deepEqual(pulls, []);
  assert.equal(desk?.campaigns[0]?.pieces.find(({ piece }) => piece === 'PRACTICE-8-1')?.isPulled, false);
  assert.notEqual(desk?.pull?.fault, null);
});
