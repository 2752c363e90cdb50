import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { SerialPort } from 'serialport';
import { modbusRegisters } from '../../src/source/modbus.ts';
import { missing } from '../practice/program.ts';
import { heard, until } from './heard.ts';

/** CRC-16 of a Modbus frame (MODBUS over serial line, specification V1.02, 6.2.2). */
function crc(bytes: Uint8Array): number {
  let sum = 0xffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >> 1) ^ 0xa001 : sum >> 1;
  }
  return sum;
}

/** A device whose every float32 is its own address. */
function answerTo(request: Buffer): Buffer {
  const [from, count] = [request.readUInt16BE(2), request.readUInt16BE(4)];
  const answer = Buffer.alloc(5 + 2 * count);
  answer.set([request[0] ?? 0, request[1] ?? 0, 2 * count]);
  for (let at = 0; at < count; at += 2) {
    const value = Buffer.alloc(4);
    value.writeFloatBE(from + at);
    answer.set(value.subarray(0, 2 * Math.min(2, count - at)), 3 + 2 * at);
  }
  answer.writeUInt16LE(crc(answer.subarray(0, -2)), answer.length - 2);
  return answer;
}

interface LateDevice {
  readonly path: string;
  /** Takes requests, and answers all of them at once after these seconds. */
  readonly stall: (seconds: number) => Promise<void>;
}

/** A slow device at the far end of a pair of pseudo-terminals; silent when it is asked for registers that it does not own. */
async function lateDevice(t: TestContext, isOwned: (address: number) => boolean = () => true): Promise<LateDevice> {
  const folder = mkdtempSync(join(tmpdir(), 'late-'));
  const [path, far] = [join(folder, 'near'), join(folder, 'far')];
  const pair = spawn('socat', [`PTY,link=${path},rawer`, `PTY,link=${far},rawer`], { stdio: 'ignore' });
  while (!existsSync(path) || !existsSync(far)) await setTimeout(5);
  const port = new SerialPort({ path: far, baudRate: 115_200 });
  t.after(async () => {
    await new Promise<void>((resolve) => port.close(() => resolve()));
    pair.kill();
    rmSync(folder, { recursive: true, force: true });
  });
  let held: Buffer[] | null = null;
  let bytes = Buffer.alloc(0);
  port.on('data', (data: Buffer) => {
    bytes = Buffer.concat([bytes, data]);
    for (; bytes.length >= 8; bytes = bytes.subarray(8)) {
      const answer = answerTo(bytes.subarray(0, 8));
      if (!isOwned(bytes.readUInt16BE(2))) continue;
      if (held === null) port.write(answer);
      else held.push(answer);
    }
  });
  return {
    path,
    stall: async (seconds) => {
      held = [];
      await setTimeout(1000 * seconds);
      const answers = held;
      held = null;
      for (const answer of answers) port.write(answer);
    },
  };
}

const place = (channel: string, address: number) =>
  ({ channel, address, kind: 'holding', type: 'float32', wordOrder: 'high first', scale: 1, shift: 0 }) as const;

/** Force and table of a device, each by a request of its own. */
const sourceAt = (path: string) =>
  modbusRegisters({
    wire: { path, baud: 115_200, dataBits: 8, parity: 'none', stopBits: 1 },
    device: 1,
    registers: [place('force', 10), place('table', 300)],
    channels: [
      { name: 'force', unit: 'kN' },
      { name: 'table', unit: 'mm' },
    ],
    every_s: 0.02,
  });

for (const stall_s of [1.3, 2.4, 4.5])
  test(`answers of a serial device that come ${stall_s} s late are never taken for those to other requests`, {
    skip: missing('socat'),
  }, async (t) => {
    const device = await lateDevice(t);
    const { sink, readings } = heard();
    const source = sourceAt(device.path);
    await source.start(sink);
    t.after(() => source.stop());
    await until(() => readings.length > 4);
    await device.stall(stall_s);
    const before = readings.length;
    await until(() => readings.length >= before + 20);
    assert.ok(readings.length >= before + 20, `${readings.length - before} readings after`);
    const seen = new Set(readings.map(({ channel, value }) => `${channel} ${value}`));
    assert.deepEqual([...seen].sort(), ['force 10', 'table 300']);
  });

test('a device that is silent where it has no register is none of practice, and is read all the same', {
  skip: missing('socat'),
}, async (t) => {
  const device = await lateDevice(t, (address) => address === 10 || address === 300);
  const { sink, readings, state } = heard();
  const source = sourceAt(device.path);
  await source.start(sink);
  t.after(() => source.stop());
  await until(() => readings.length > 4);
  assert.ok(readings.length > 4, `${readings.length} readings`);
  assert.equal(state.practice, 0);
});
