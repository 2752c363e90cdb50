import assert from 'node:assert/strict';
import { once } from 'node:events';
import { lstatSync } from 'node:fs';
import { test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { fromBench, isInputError, parseUnit, type WatchSample } from '@provinghouse/core';
import modbus from 'modbus-serial';
import mqtt from 'mqtt';
import { SerialPort } from 'serialport';
import { isPracticeLine, practiceRegisters, type ServePracticeOptions } from '../../src/practice/index.ts';
import { assertLines, collected, dial, ductile, expected, inHurry, lay } from './laid-wire.ts';
import { freePort, missing, startBroker } from './program.ts';

const tcp = { ...ductile, over: 'tcp' } as const;

/** Reads a TCP wire to its end. */
async function assertWhole(pace: {
  readonly speed: NonNullable<ServePracticeOptions['speed']>;
  readonly rate_Hz: number;
}): Promise<void> {
  const options = { ...tcp, ...pace };
  const wire = await lay(options);
  const text = await collected(dial(wire));
  assertLines(text, options, (await wire.ended).made);
}

for (const rate_Hz of [10, 100, 1000, 10_000])
  test(`TCP, ${rate_Hz} Hz: every sample arrives, in order, digit for digit, between two marks`, () =>
    assertWhole({ ...inHurry, rate_Hz }));

test('TCP against the clock, 200 times faster: the same samples', () => assertWhole({ speed: 200, rate_Hz: 100 }));

test('TCP to a reader that dawdles: nothing is dropped', async () => {
  const options = { ...tcp, ...inHurry, rate_Hz: 1000 };
  const wire = await lay(options);
  const socket = dial(wire);
  const text = collected(socket);
  for (let i = 0; i < 5; i++) {
    await setTimeout(30);
    socket.pause();
    await setTimeout(30);
    socket.resume();
  }
  assertLines(await text, options, (await wire.ended).made);
});

test('TCP: time stands still while nobody reads, and each connection opens with the mark', async () => {
  const wire = await lay({ ...tcp, rate_Hz: 1000, speed: 10 });
  await setTimeout(50);
  assert.equal(wire.progress().made, 0);
  const first = dial(wire);
  await once(first, 'data');
  first.destroy();
  while (wire.progress().readers > 0) await setTimeout(5);
  await setTimeout(20);
  const { made } = wire.progress();
  await setTimeout(50);
  assert.equal(wire.progress().made, made);
  const second = dial(wire);
  const [opening] = await once(second, 'data');
  assert.ok(isPracticeLine(String(opening)));
  second.destroy();
});

test('TCP: the pattern decides order, units and line ends', async () => {
  const options = { ...tcp, ...inHurry, rate_Hz: 20 };
  const pattern = '{time[ms]};{force[lbf]} lbf;{table[in]}';
  const wire = await lay({ ...options, pattern, lineEnd: '\r\n' });
  const text = await collected(dial(wire));
  assert.ok(text.endsWith('\r\n'));
  const lines = text
    .trim()
    .split('\r\n')
    .filter((line) => !isPracticeLine(line));
  const pounds = parseUnit('lbf');
  assert.ok(pounds.kind === 'known');
  for (const [i, sample] of expected(options, lines.length).entries()) {
    const [, time, force] = /^(\d+);(-?[\d.]+) lbf;-?[\d.]+$/.exec(lines[i] ?? '') ?? [];
    assert.equal(Number(time), Math.round(sample.time_s * 1000));
    assert.ok(Math.abs(Number(force) - fromBench(sample.force_kN, pounds.unit)) < 1e-6);
  }
});

test('the user turns the valve on the wire', async () => {
  const wire = await lay({ ...tcp, valve: 'closed', speed: 100 });
  const socket = dial(wire).resume();
  while (wire.progress().time_s < 3) await setTimeout(5);
  assert.equal(wire.truth().maximumForce_kN, 0);
  wire.turnValve(60);
  while (!wire.progress().hasParted) await setTimeout(5);
  assert.ok(wire.truth().maximumForce_kN > 30);
  socket.destroy();
});

test('a serial line by pseudo-terminal: every sample arrives, in order', { skip: missing('socat') }, async (t) => {
  const options = { ...ductile, ...inHurry, rate_Hz: 100, over: 'pty' } as const;
  const wire = await lay(options);
  const port = new SerialPort({ path: wire.address, baudRate: 115_200 });
  t.after(() => port.isOpen && port.close());
  let text = '';
  port.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  const { made } = await wire.ended;
  while (!text.includes('ended, parted')) await setTimeout(10);
  await new Promise((resolve) => port.close(resolve));
  assertLines(text, options, made);
});

test('a serial line whose reader leaves is laid again for the next, mark first', {
  skip: missing('socat'),
}, async () => {
  const wire = await lay({ ...ductile, rate_Hz: 100, over: 'pty' });
  // The line of the reader who left still stands for a moment.
  const laidAt = () => lstatSync(wire.address, { bigint: true, throwIfNoEntry: false })?.mtimeNs;
  for (let visit = 0; visit < 2; visit++) {
    const laid = laidAt();
    const port = new SerialPort({ path: wire.address, baudRate: 9600 });
    const [opening] = await once(port, 'data');
    assert.ok(isPracticeLine(String(opening)));
    await new Promise((resolve) => port.close(resolve));
    while (wire.progress().readers > 0) await setTimeout(10);
    while (visit === 0 && (laidAt() ?? laid) === laid) await setTimeout(10);
  }
});

for (const [wordOrder, speed] of [
  ['high first', 'as fast as it is read'],
  ['low first', 20],
] as const) {
  test(`Modbus TCP, ${wordOrder}, speed ${speed}: the ring gives every sample in order, the first registers say PRACTICE`, async () => {
    const options = { ...ductile, speed, rate_Hz: 100, over: 'modbus', wordOrder } as const;
    const wire = await lay(options);
    const client = new modbus.default();
    await client.connectTCP('127.0.0.1', { port: wire.port ?? 0 });
    const words = (data: readonly number[], at: number) => {
      const [a = 0, b = 0] = [data[at], data[at + 1]];
      const view = new DataView(new ArrayBuffer(4));
      view.setUint16(0, wordOrder === 'high first' ? a : b);
      view.setUint16(2, wordOrder === 'high first' ? b : a);
      return view;
    };
    const map = practiceRegisters;
    const mark = await client.readInputRegisters(map.mark, 4);
    assert.equal(mark.buffer.toString('ascii'), 'PRACTICE');
    const got: WatchSample[] = [];
    for (let state = 0; state < 3 || got.length < wire.progress().made; ) {
      const head = (await client.readHoldingRegisters(map.state, 3)).data;
      state = head[0] ?? 0;
      const count = words(head, 1).getUint32(0);
      while (got.length < count) {
        const slot = got.length % map.ringLength;
        // 125 registers a request is the most the protocol allows: 15 samples.
        const many = Math.min(count - got.length, 15, map.ringLength - slot);
        const { data } = await client.readHoldingRegisters(map.ring + map.sampleWidth * slot, many * map.sampleWidth);
        for (let i = 0; i < many; i++) {
          const value = (at: number) => words(data, map.sampleWidth * i + at).getFloat32(0);
          got.push({ time_s: value(0), force_kN: value(2), table_mm: value(4), extension_mm: value(6) });
        }
      }
    }
    const due = expected(options, (await wire.ended).made);
    assert.equal(got.length, due.length);
    for (const [i, sample] of due.entries()) {
      const { time_s, force_kN, table_mm, extension_mm } = sample;
      const float32 = [time_s, force_kN, table_mm ?? 0, extension_mm ?? 0].map(Math.fround);
      assert.deepEqual(Object.values(got[i] ?? {}), float32);
    }
    await assert.rejects(client.readHoldingRegisters(60_000, 2), /Illegal data address/i);
    await new Promise((resolve) => client.close(resolve));
  });
}

for (const layout of ['topic a signal', 'samples together'] as const) {
  test(`MQTT, ${layout}: every sample arrives in order and says that it is practice`, {
    skip: missing('mosquitto'),
  }, async () => {
    const broker = await startBroker();
    const client = await mqtt.connectAsync(broker.url);
    const heard: { topic: string; payload: string }[] = [];
    client.on('message', (topic, payload) => heard.push({ topic, payload: payload.toString() }));
    await client.subscribeAsync('bay/1/#', { qos: 1 });
    const rate_Hz = layout === 'topic a signal' ? 10 : 1000;
    const options = {
      ...ductile,
      ...inHurry,
      rate_Hz,
      over: 'mqtt',
      broker: broker.url,
      base: 'bay/1',
      layout,
    } as const;
    const wire = await lay(options);
    const due = expected(options, (await wire.ended).made);
    const last = () =>
      heard.some((message) => message.topic === 'bay/1/practice' && message.payload.includes('"parted"'));
    while (!last()) await setTimeout(5);
    const on = (topic: string) => heard.filter((message) => message.topic === `bay/1/${topic}`).map((m) => m.payload);
    assert.equal(JSON.parse(on('practice')[0] ?? '{}').mark, 'PRACTICE');
    if (layout === 'samples together') {
      const got = on('samples').flatMap((payload) => payload.split('\n').map((line) => JSON.parse(line)));
      assert.deepEqual(got, JSON.parse(JSON.stringify(due.map((sample) => ({ ...sample, practice: true })))));
    } else {
      const forces = on('force').map((payload) => JSON.parse(payload));
      const wanted = due.map((s) => ({ time_s: s.time_s, value: s.force_kN, unit: 'kN', practice: true }));
      assert.deepEqual(forces, JSON.parse(JSON.stringify(wanted)));
      assert.equal(on('table').length, due.length);
      assert.equal(on('extension').length, due.length);
    }
    await wire.stop();
    const late = await mqtt.connectAsync(broker.url);
    let kept = 0;
    late.on('message', () => kept++);
    await late.subscribeAsync('bay/1/#');
    await setTimeout(50);
    assert.equal(kept, 0, 'the mark is taken off the topic with the wire');
    await Promise.all([client.endAsync(), late.endAsync()]);
    await broker.stop();
  });
}

const malformed: readonly (readonly [string, Pick<ServePracticeOptions, 'rig'> & { readonly pattern: string }])[] = [
  ['a pattern with {*}', { pattern: 'F {force[kN]} {*}' }],
  ['a signal the rig lacks', { pattern: 'F {load[kN]}' }],
  ['a force in millimetres', { pattern: 'F {force[mm]}' }],
  ['a force without a unit', { pattern: 'F {force}' }],
  ['an extension without a gauge', { rig: { hasGauge: false }, pattern: 'F {force[kN]} E {extension[mm]}' }],
];
const twiceOnOnePort = async (over: 'tcp' | 'modbus') => {
  const { port } = await lay({ ...ductile, over });
  await lay({ ...ductile, over, port: port ?? 0 });
};
const nowhere = async () => lay({ ...ductile, over: 'mqtt', broker: `mqtt://127.0.0.1:${await freePort()}` });

const refused: readonly (readonly [string, string, () => Promise<unknown>])[] = [
  ['a speed of nothing', 'practice/option', () => lay({ ...tcp, speed: 0 })],
  ...malformed.map(([what, other]) => [what, 'practice/pattern', () => lay({ ...tcp, ...other })] as const),
  ['a broker that is not there', 'practice/wire', nowhere],
  ['a port that is taken', 'practice/wire', () => twiceOnOnePort('tcp')],
  ['a Modbus port that is taken', 'practice/wire', () => twiceOnOnePort('modbus')],
];

for (const [what, code, attempt] of refused) {
  test(`${what} is refused`, async () => {
    await assert.rejects(attempt, (error) => isInputError(error) && error.code === code);
  });
}
