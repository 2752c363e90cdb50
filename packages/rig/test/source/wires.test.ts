import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { ServerSerial, ServerTCP } from 'modbus-serial';
import mqtt from 'mqtt';
import {
  type ModbusOptions,
  modbusRegisters,
  mqttTopics,
  type RegisterPlace,
  type Source,
  serialLines,
} from '../../src/index.ts';
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

/** Starts a source and keeps what it says. */
async function listen(source: Source) {
  const all = heard();
  await source.start(all.sink);
  return all;
}

const settings = { baud: 115200, dataBits: 8, parity: 'none', stopBits: 1 } as const;
const serial = (path: string, format: { readonly pattern: string; readonly decimal: '.' | ',' }) =>
  serialLines({ ...settings, path, ...format, channels: [] });

test('a serial line is read through a pseudo-terminal, split and garbled as it comes', {
  skip: missing('socat'),
}, async () => {
  const { near, far } = await ptyPair();
  const source = serial(near, { pattern: '{force[N]};{table[mm]}', decimal: ',' });
  const all = await listen(source);
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
  const source = serial(first.near, { pattern: '{force[kN]}', decimal: '.' });
  const all = await listen(source);
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
const table = { name: 'table', unit: 'mm' };
const channels = [{ name: 'force', unit: 'N' }, table];
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

const device = (wire: ModbusOptions['wire'], other: Partial<ModbusOptions> = {}) =>
  modbusRegisters({ wire, device: 3, registers: places, channels, every_s: 0.01, ...other });

async function opened(server: ServerTCP | ServerSerial) {
  await once(server, 'initialized');
  return { close: () => new Promise<void>((resolve) => server.close(() => resolve())) };
}

function modbusServer(port: number) {
  const server = new ServerTCP(vector, { host: '127.0.0.1', port, unitID: 3 });
  server.on('socketError', () => {});
  return opened(server);
}

test('registers of a Modbus TCP device are read by the map, and the device may go and come back', async () => {
  const port = await freePort();
  const server = await modbusServer(port);
  const source = device({ host: '127.0.0.1', port });
  const all = await listen(source);
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
  const source = device({ host: '127.0.0.1', port }, { registers: [place('force', 700)] });
  const all = await listen(source);
  await until(() => all.troubles.length > 0);
  await setTimeout(100);
  await source.stop();
  await server.close();
  assert.equal(all.troubles.length, 1);
  assert.match(all.troubles[0] ?? '', /refuses/);
});

test('registers of a Modbus RTU device are read over a serial line', { skip: missing('socat') }, async () => {
  const { near, far } = await ptyPair();
  const unit = new ServerSerial(vector, { port: far, baudRate: 115200, unitID: 3 } as never);
  unit.on('error', () => {});
  const server = await opened(unit);
  const source = device({ ...settings, path: near }, { every_s: 0.02 });
  const all = await listen(source);
  await until(() => all.values('table').length > 3);
  await source.stop();
  await server.close();
  assert.ok(all.values('force').length > 3);
  assert.ok(all.values('force').every((value) => value === 12.5005));
});

async function broker(port?: number) {
  const started = await startBroker(port);
  cleanups.push(started.stop);
  return started;
}

test('MQTT topics carry plain numbers or JSON; a retained one is late and text is kept as rejected', {
  skip: missing('mosquitto'),
}, async () => {
  const { url, stop } = await broker();
  const client = await mqtt.connectAsync(url);
  await client.publishAsync('rig/force', '99', { retain: true });
  const source = mqttTopics({
    broker: url,
    topics: [
      { topic: 'rig/force', channel: 'force' },
      { topic: 'rig/table', channel: 'table', path: 'travel[0].mm' },
    ],
    channels: [{ name: 'force', unit: 'kN' }, table],
    decimal: '.',
  });
  const all = await listen(source);
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
  await stop();
  assert.deepEqual(all.values('force'), [99, 1.5, 2.5]);
  assert.deepEqual(all.values('table'), [3]);
  assert.equal(all.readings[0]?.quality, 'late');
  assert.deepEqual(
    all.rejected.map(({ text }) => text),
    ['NaN', '{"travel":'],
  );
});

test('a broker that goes away and comes back is subscribed to again', { skip: missing('mosquitto') }, async () => {
  const port = await freePort();
  const first = await broker(port);
  const { url } = first;
  const topics = [{ topic: 'f', channel: 'force' }];
  const source = mqttTopics({ broker: url, topics, channels: [{ name: 'force', unit: 'kN' }], decimal: '.' });
  const all = await listen(source);
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
  const second = await broker(port);
  await until(() => all.troubles.some((words) => words.includes('is back')));
  const before = all.readings.length;
  await send('2', before + 1);
  await source.stop();
  await second.stop();
  assert.deepEqual([all.values('force')[0], all.values('force').at(-1)], [1, 2]);
});
