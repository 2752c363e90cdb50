import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { ServerSerial, ServerTCP } from 'modbus-serial';
import mqtt from 'mqtt';
import { modbusRegisters, mqttTopics, type RegisterPlace, serialLines } from '../../src/index.ts';
import { freePort, missing, startBroker } from '../practice/program.ts';
import { heard, until } from './heard.ts';

const cleanups: (() => unknown)[] = [];
after(async () => {
  for (const clean of cleanups.toReversed()) await clean();
});

/** Two ends of a serial line. */
async function ptyPair() {
  const folder = mkdtempSync(join(tmpdir(), 'serial-'));
  const [near, far] = [join(folder, 'near'), join(folder, 'far')];
  const child = spawn('socat', [`PTY,link=${near},rawer`, `PTY,link=${far},rawer`], { stdio: 'ignore' });
  cleanups.push(() => {
    child.kill();
    rmSync(folder, { recursive: true, force: true });
  });
  await until(() => existsSync(near) && existsSync(far));
  return { near, far, child };
}

const settings = { baud: 115200, dataBits: 8, parity: 'none', stopBits: 1 } as const;

test('a serial line is read through a pseudo-terminal, split and garbled as it comes', {
  skip: missing('socat'),
}, async () => {
  const { near, far } = await ptyPair();
  const source = serialLines({
    ...settings,
    path: near,
    pattern: '{force[N]};{table[mm]}',
    decimal: ',',
    channels: [],
  });
  const all = heard();
  await source.start(all.sink);
  await setTimeout(100);
  for (const part of ['1250', '0,5;', '3,25\r', '\n\x80\x81\x82\r\n', '20000;4\r\n']) {
    writeFileSync(far, Buffer.from(part, 'latin1'));
    await setTimeout(5);
  }
  await until(() => all.values('table').length === 2);
  await source.stop();
  assert.deepEqual(all.values('force'), [12.5005, 20]);
  assert.deepEqual(
    all.rejected.map(({ text }) => text),
    ['\x80\x81\x82'],
  );
});

test('a serial adapter pulled out and put back is found again', { skip: missing('socat') }, async () => {
  const first = await ptyPair();
  const source = serialLines({ ...settings, path: first.near, pattern: '{force[kN]}', decimal: '.', channels: [] });
  const all = heard();
  await source.start(all.sink);
  await setTimeout(100);
  writeFileSync(first.far, '1\n');
  await until(() => all.readings.length === 1);
  first.child.kill();
  await until(() => all.troubles.length > 0);
  const again = spawn('socat', [`PTY,link=${first.near},rawer`, `PTY,link=${first.far},rawer`], { stdio: 'ignore' });
  cleanups.push(() => again.kill());
  await until(() => all.troubles.some((words) => words.includes('is back')));
  writeFileSync(first.far, '2\n');
  await until(() => all.readings.length === 2);
  await source.stop();
  assert.deepEqual(all.values('force'), [1, 2]);
});

const place = (channel: string, address: number, more: Partial<RegisterPlace> = {}): RegisterPlace => ({
  channel,
  address,
  type: 'float32',
  wordOrder: 'high first',
  scale: 1,
  shift: 0,
  kind: 'holding',
  ...more,
});
const channels = [
  { name: 'force', unit: 'N' },
  { name: 'table', unit: 'mm' },
];
/** Force 12 500.5 N as float32, low word first, at 10; table -1234 as int16 in hundredths of a mm at 12. */
const bank = new Map([
  [10, 0x5200],
  [11, 0x4643],
  [12, 0x10000 - 1234],
]);
const vector = {
  getHoldingRegister(address: number): number {
    const value = bank.get(address);
    if (value === undefined) throw Object.assign(new Error('no such register'), { modbusErrorCode: 2 });
    return value;
  },
};
const places = [place('force', 10, { wordOrder: 'low first' }), place('table', 12, { type: 'int16', scale: 0.01 })];

async function modbusServer(port: number) {
  const server = new ServerTCP(vector, { host: '127.0.0.1', port, unitID: 3 });
  server.on('socketError', () => {});
  await new Promise<void>((resolve) => server.on('initialized', () => resolve()));
  return { close: () => new Promise<void>((resolve) => server.close(() => resolve())) };
}

test('registers of a Modbus TCP device are read by the map, and the device may go and come back', async () => {
  const port = await freePort();
  const server = await modbusServer(port);
  const source = modbusRegisters({
    wire: { host: '127.0.0.1', port },
    device: 3,
    registers: places,
    channels,
    every_s: 0.01,
  });
  const all = heard();
  await source.start(all.sink);
  await until(() => all.values('force').length > 5);
  await server.close();
  await until(() => all.troubles.some((words) => words.includes('lost')));
  const before = all.readings.length;
  const second = await modbusServer(port);
  await until(() => all.readings.length > before + 5);
  await source.stop();
  await second.close();
  assert.ok(
    all.values('force').every((value) => value === 12.5005),
    String(all.values('force')[0]),
  );
  assert.ok(all.values('table').every((value) => Math.abs(value + 12.34) < 1e-12));
  assert.equal(all.state.practice, 0);
});

test('a register the device does not have is said, once', async () => {
  const port = await freePort();
  const server = await modbusServer(port);
  const source = modbusRegisters({
    wire: { host: '127.0.0.1', port },
    device: 3,
    registers: [place('force', 700)],
    channels,
    every_s: 0.01,
  });
  const all = heard();
  await source.start(all.sink);
  await until(() => all.troubles.length > 0);
  await setTimeout(100);
  await source.stop();
  await server.close();
  assert.equal(all.troubles.length, 1);
  assert.match(all.troubles[0] ?? '', /refuses/);
});

test('registers of a Modbus RTU device are read over a serial line', { skip: missing('socat') }, async () => {
  const { near, far } = await ptyPair();
  const server = new ServerSerial(vector, { port: far, baudRate: 115200, unitID: 3 } as never);
  server.on('error', () => {});
  await new Promise<void>((resolve) => server.on('initialized', () => resolve()));
  const source = modbusRegisters({
    wire: { ...settings, path: near },
    device: 3,
    registers: places,
    channels,
    every_s: 0.02,
  });
  const all = heard();
  await source.start(all.sink);
  await until(() => all.values('table').length > 3);
  await source.stop();
  await new Promise<void>((resolve) => server.close(() => resolve()));
  assert.ok(all.values('force').length > 3);
  assert.ok(all.values('force').every((value) => value === 12.5005));
});

test('MQTT topics carry plain numbers or JSON; a retained one is late and text is kept as rejected', {
  skip: missing('mosquitto'),
}, async () => {
  const broker = await startBroker();
  const client = await mqtt.connectAsync(broker.url);
  await client.publishAsync('rig/force', '99', { retain: true });
  const source = mqttTopics({
    broker: broker.url,
    topics: [
      { topic: 'rig/force', channel: 'force' },
      { topic: 'rig/table', channel: 'table', path: 'travel[0].mm' },
    ],
    channels: [
      { name: 'force', unit: 'kN' },
      { name: 'table', unit: 'mm' },
    ],
    decimal: '.',
  });
  const all = heard();
  await source.start(all.sink);
  await until(() => all.readings.length === 1);
  for (const [topic, payload] of [
    ['rig/force', '1.5'],
    ['rig/force', 'NaN'],
    ['rig/table', '{"travel":[{"mm":3}]}'],
    ['rig/table', '{"travel":'],
    ['rig/other', '7'],
    ['rig/force', '2.5'],
  ] as const)
    await client.publishAsync(topic, payload, { qos: 1 });
  await until(() => all.values('force').length === 3);
  await source.stop();
  await client.endAsync();
  await broker.stop();
  assert.deepEqual(all.values('force'), [99, 1.5, 2.5]);
  assert.deepEqual(all.values('table'), [3]);
  assert.equal(all.readings[0]?.quality, 'late');
  assert.deepEqual(
    all.rejected.map(({ text }) => text),
    ['NaN', '{"travel":'],
  );
});

/** A broker on a port of the test's choosing; by itself Mosquitto listens to this machine only. */
async function brokerAt(port: number) {
  const child = spawn('mosquitto', ['-p', String(port)], { stdio: 'ignore' });
  const gone = new Promise((resolve) => child.once('exit', resolve));
  const stop = async () => {
    child.kill();
    await gone;
  };
  cleanups.push(stop);
  let answers = false;
  const ask = () => {
    const socket = connect(port, '127.0.0.1', () => {
      answers = true;
      socket.destroy();
    });
    socket.on('error', () => void setTimeout(20).then(ask));
  };
  ask();
  await until(() => answers);
  return { stop };
}

test('a broker that goes away and comes back is subscribed to again', { skip: missing('mosquitto') }, async () => {
  const port = await freePort();
  const url = `mqtt://127.0.0.1:${port}`;
  const first = await brokerAt(port);
  const topics = [{ topic: 'f', channel: 'force' }];
  const source = mqttTopics({ broker: url, topics, channels: [{ name: 'force', unit: 'kN' }], decimal: '.' });
  const all = heard();
  await source.start(all.sink);
  const send = async (value: string, wanted: number) => {
    const client = await mqtt.connectAsync(url);
    for (let i = 0; i < 100 && all.readings.length < wanted; i++) {
      await client.publishAsync('f', value);
      await setTimeout(20);
    }
    await client.endAsync();
  };
  cleanups.push(() => source.stop());
  await send('1', 1);
  await first.stop();
  await until(() => all.troubles.some((words) => words.includes('was lost')));
  const second = await brokerAt(port);
  await until(() => all.troubles.some((words) => words.includes('is back')));
  const before = all.readings.length;
  await send('2', before + 1);
  await source.stop();
  await second.stop();
  assert.deepEqual([all.values('force')[0], all.values('force').at(-1)], [1, 2]);
});
