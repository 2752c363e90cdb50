import assert from 'node:assert/strict';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { type TestContext, test } from 'node:test';
import type { WireTestMessage } from '@provinghouse/contract';
import { isInputError } from '@provinghouse/core';
import { openSource, sourceConfiguration } from '@provinghouse/rig';
import { openRigDesks, practiceRig, type RigDesks, type WiredRig } from '../../src/pull/index.ts';
import { armInput, openBench } from './bench.ts';

const rig = 'PRACTICE-RIG';

type Report = Extract<WireTestMessage, { readonly kind: 'report' }>;

/** Looks on at a test of the wires. */
async function lookOn(desks: RigDesks, name = rig) {
  const told: WireTestMessage[] = [];
  const over = Promise.withResolvers<void>();
  const news: (() => void)[] = [];
  const leave = await desks.testWires(name, {
    send: (message) => {
      told.push(message);
      for (const wake of news.splice(0)) wake();
    },
    backlog: () => 0,
    drop: () => over.resolve(),
  });
  async function until(holds: (report: Report) => boolean): Promise<Report> {
    for (;;) {
      const last = told.at(-1);
      if (last?.kind === 'report' && holds(last)) return last;
      await new Promise<void>((resolve) => news.push(resolve));
    }
  }
  return { told, leave, until, over: over.promise };
}

/** A wire that sends a line every few milliseconds and counts who is connected. */
async function talkingRig(t: TestContext, line: (i: number) => string, pattern = 'F {force[kN]}') {
  let connected = 0;
  const server = createServer((socket) => {
    connected++;
    let i = 0;
    const timer = setInterval(() => socket.write(line(i++)), 5);
    socket.on('error', () => undefined);
    socket.on('close', () => {
      clearInterval(timer);
      connected--;
    });
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  t.after(() => server.close());
  const address = server.address();
  assert.ok(typeof address === 'object' && address);
  const configuration = sourceConfiguration({ kind: 'tcp lines', host: '127.0.0.1', port: address.port, pattern });
  const wired: WiredRig = {
    rig,
    describe: 'a wire',
    isPractice: true,
    open: async () => ({ sources: [openSource(configuration)], close: async () => undefined }),
  };
  return { wired, connected: () => connected };
}

async function untilFree(connected: () => number): Promise<void> {
  while (connected() > 0) await new Promise((resolve) => setTimeout(resolve, 5));
}

test('the practice rig at rest is heard on all its channels, says that it is practice, and nothing is found wrong', async (t) => {
  const { desks } = await openBench(t, [practiceRig({ rig })]);
  const { until, leave } = await lookOn(desks);
  const { reports, findings } = await until(({ reports: [one] }) => (one?.channels[0]?.readings ?? 0) >= 60);
  const [wire] = reports;
  assert.ok(wire?.isPractice);
  assert.deepEqual(
    wire.channels.map(({ channel, benchUnit }) => [channel, benchUnit]),
    [
      ['force', 'kN'],
      ['table', 'mm'],
      ['extension', 'mm'],
    ],
  );
  const rate_Hz = wire.channels[0]?.rate_Hz ?? 0;
  assert.ok(rate_Hz > 80 && rate_Hz < 120, `${rate_Hz} a second`);
  assert.ok(wire.lines.some(({ text }) => /^F -?[\d.]+ T [\d.]+ X/.test(text)));
  assert.deepEqual(findings, []);
  leave?.();
});

test('a wrong pattern is found, with the line beside it', async (t) => {
  const { wired } = await talkingRig(t, (i) => `LOAD=${i % 7}.25\r\n`);
  const { desks } = await openBench(t, [wired]);
  const { until, leave } = await lookOn(desks);
  const { findings } = await until((report) => report.findings.length > 0);
  const [finding] = findings;
  assert.ok(finding?.kind === 'none read');
  assert.equal(finding.pattern, 'F {force[kN]}');
  assert.match(finding.example, /^LOAD=\d\.25$/);
  leave?.();
});

test('many look on at one test; the wires are let go when the last has left', async (t) => {
  const { wired, connected } = await talkingRig(t, (i) => `F ${i % 7}\n`);
  const { desks } = await openBench(t, [wired]);
  const [one, two] = [await lookOn(desks), await lookOn(desks)];
  await Promise.all([one, two].map(({ until }) => until(({ reports: [wire] }) => (wire?.bytes ?? 0) > 0)));
  assert.equal(connected(), 1);
  one.leave?.();
  await two.until(({ reports: [wire] }) => (wire?.seconds ?? 0) > 0.6);
  assert.equal(connected(), 1);
  two.leave?.();
  await untilFree(connected);
  assert.equal(await desks.testWires('NONE', { send() {}, backlog: () => 0, drop() {} }), null);
});

test('a pull that is armed takes the wires: the test ends and says so, and none begins until the pull is over', async (t) => {
  const { wired, connected } = await talkingRig(t, (i) => `F ${i % 7}\n`);
  const { desks } = await openBench(t, [wired]);
  const { told, until, over } = await lookOn(desks);
  await until(({ reports: [wire] }) => (wire?.bytes ?? 0) > 0);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  await over;
  assert.deepEqual(told.at(-1), { kind: 'over', why: 'pull' });
  await assert.rejects(lookOn(desks), (error) => isInputError(error) && error.code === 'pull/wires-taken');
  await desks.stop(rig);
  await untilFree(connected);
  const again = await lookOn(desks);
  await again.until(({ reports: [wire] }) => (wire?.bytes ?? 0) > 0);
  again.leave?.();
});

test('an arming that is refused leaves the test alone', async (t) => {
  const { wired } = await talkingRig(t, (i) => `F ${i % 7}\n`);
  const { desks } = await openBench(t, [wired]);
  const { told, until, leave } = await lookOn(desks);
  await assert.rejects(desks.arm(rig, armInput('PRACTICE-8-1', { cautions: [] })));
  const { seconds } = await until(() => true);
  await until((report) => report.seconds > seconds);
  assert.ok(told.every(({ kind }) => kind === 'report'));
  leave?.();
});

test('a test ends by itself after its time, and wires that cannot be opened are told with their code', async (t) => {
  const { wired, connected } = await talkingRig(t, (i) => `F ${i % 7}\n`);
  const { home, effects } = await openBench(t, []);
  const short = openRigDesks({ rigs: [wired], home, wireTestLimit_s: 0.4 }, effects);
  const { told, over } = await lookOn(short);
  await over;
  assert.deepEqual(told.at(-1), { kind: 'over', why: 'limit' });
  await untilFree(connected);
  const wrong = { ...wired, open: async () => Promise.reject(new Error('no such device')) };
  const broken = await lookOn(openRigDesks({ rigs: [wrong], home }, effects));
  await broken.over;
  assert.deepEqual(broken.told, [{ kind: 'refused', code: 'pull/wires-fault', words: 'no such device' }]);
});
