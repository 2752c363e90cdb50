import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { readTrace } from '@provinghouse/core';
import {
  modbusRegisters,
  mqttTopics,
  type RegisterPlace,
  recover,
  type Source,
  sealSpool,
  serialLines,
  startRecord,
  tcpLines,
} from '../../src/index.ts';
import { type PracticeWire, practiceRegisters, servePractice } from '../../src/practice/index.ts';
import { missing, startBroker } from '../practice/program.ts';
import { until } from '../source/heard.ts';

const folder = mkdtempSync(join(tmpdir(), 'pull-'));
const open: { stop(): Promise<unknown> }[] = [];
after(async () => {
  for (const one of open.toReversed()) await one.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** One link, pulled briskly: some twenty seconds. */
const pull = {
  seed: 3,
  chain: { links: 1 },
  valve: { approach_mm_per_min: 150, takeUp_mm_per_min: 14, main_mm_per_min: 28, idle_s: 0.5 },
  speed: 'as fast as it is read',
} as const;
const lines = {
  pattern: 'F {force[kN]} T {time[s]} X {table[mm]} E {extension[mm]}',
  decimal: '.',
  channels: [],
  isClockFree: true,
} as const;
const units = [
  { name: 'force', unit: 'kN' },
  { name: 'table', unit: 'mm' },
  { name: 'extension', unit: 'mm' },
];

let count = 0;
/** Records what the wire carries until the pull is over, seals it, and compares with what the simulator knows. */
async function carried(wire: PracticeWire, source: Source): Promise<void> {
  const path = join(folder, `${count++}.spool`);
  let shown = 0;
  const record = await startRecord({
    path,
    header: { pull: 'P', piece: 'S', rig: 'practice', isPractice: false, startedAt: new Date().toISOString() },
    sources: [source],
    listener: {
      samples(batch) {
        shown += batch.length;
      },
      trouble: () => {},
    },
  });
  // A map of registers is followed from the first round of questions on.
  await setTimeout(50);
  wire.start();
  const { made } = await wire.ended;
  await until(() => shown >= made);
  await setTimeout(20);
  await record.stop('parted');
  const found = await recover(path);
  assert.equal(found.samples, made, found.notes.join(' '));
  assert.deepEqual(found.gaps, []);
  const sealed = await sealSpool(path, `${path}.csv`);
  assert.equal(sealed.isPractice, true, 'a wire that says it is practice makes a practice record');
  // The transducer's error of indication, 0.15 %, lies inside class 0.5 (ISO 7500-1).
  const reading = readTrace(readFileSync(sealed.path), { rig: { classPct: 0.5 } });
  const truth = wire.truth();
  const off = Math.abs((reading.maximumForce_kN ?? Number.NaN) - truth.maximumForce_kN);
  const stated = 2 * (reading.maximumForceUncertainty_kN ?? Number.NaN);
  assert.ok(off <= stated, `${reading.maximumForce_kN} against ${truth.maximumForce_kN} kN, stated ${stated}`);
}

for (const rate_Hz of [10, 100, 1000, 10_000])
  test(`a practice pull at ${rate_Hz} Hz over TCP is sealed whole, and its reading is the truth`, async () => {
    const wire = await servePractice({ ...pull, over: 'tcp', rate_Hz });
    open.push(wire);
    await carried(wire, tcpLines({ ...lines, host: '127.0.0.1', port: wire.port ?? 0 }));
  });

for (const rate_Hz of [10, 100, 1000])
  test(`a practice pull at ${rate_Hz} Hz over a serial line is sealed whole, and its reading is the truth`, {
    skip: missing('socat'),
  }, async () => {
    const wire = await servePractice({ ...pull, over: 'pty', rate_Hz });
    open.push(wire);
    const settings = { path: wire.address, baud: 115200, dataBits: 8, parity: 'none', stopBits: 1 } as const;
    await carried(wire, serialLines({ ...lines, ...settings }));
  });

for (const rate_Hz of [10, 100, 1000])
  test(`a practice pull at ${rate_Hz} Hz over Modbus TCP is sealed whole, and its reading is the truth`, async () => {
    const wire = await servePractice({ ...pull, over: 'modbus', rate_Hz, startWhen: 'told' });
    open.push(wire);
    const float = { type: 'float32', wordOrder: 'high first' } as const;
    const place = (channel: string, address: number): RegisterPlace => ({
      channel,
      address,
      ...float,
      scale: 1,
      shift: 0,
      kind: 'holding',
    });
    const source = modbusRegisters({
      wire: { host: '127.0.0.1', port: wire.port ?? 0 },
      device: 1,
      registers: [place('force', 2), place('table', 4), place('extension', 6)],
      channels: units,
      every_s: 0.001,
      clock: { address: 0, ...float, unit: 's' },
      ring: {
        counter: { address: practiceRegisters.samples, type: 'uint32', wordOrder: 'high first' },
        from: practiceRegisters.ring,
        length: practiceRegisters.ringLength,
        width: practiceRegisters.sampleWidth,
      },
      isClockFree: true,
    });
    await carried(wire, source);
  });

for (const rate_Hz of [10, 100, 1000])
  test(`a practice pull at ${rate_Hz} Hz over MQTT is sealed whole, and its reading is the truth`, {
    skip: missing('mosquitto'),
  }, async () => {
    const broker = await startBroker();
    open.push(broker);
    const base = `rig-${rate_Hz}`;
    const topic = `${base}/samples`;
    const source = mqttTopics({
      broker: broker.url,
      topics: units.map(({ name, unit }) => ({
        topic,
        channel: name,
        path: `${name}_${unit}`,
        timePath: 'time_s',
        timeUnit: 's',
      })),
      channels: units,
      decimal: '.',
      isClockFree: true,
    });
    const wire = await servePractice({
      ...pull,
      over: 'mqtt',
      broker: broker.url,
      base,
      layout: 'samples together',
      rate_Hz,
      startWhen: 'told',
    });
    open.push(wire);
    await carried(wire, source);
  });
