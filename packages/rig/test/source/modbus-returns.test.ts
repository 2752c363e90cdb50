import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';
import { type PracticeWire, servePractice } from '../../src/practice/index.ts';
import { type ModbusOptions, modbusRegisters } from '../../src/source/modbus.ts';
import { freePort, missing } from '../practice/program.ts';
import { heard, until } from './heard.ts';

interface Place {
  readonly wire: ModbusOptions['wire'];
  readonly serve: () => Promise<PracticeWire>;
}

const rig = { seed: 3, rate_Hz: 100, chain: { links: 1 } } as const;

async function tcpPlace(): Promise<Place> {
  const port = await freePort();
  return { wire: { host: '127.0.0.1', port }, serve: () => servePractice({ ...rig, over: 'modbus', port }) };
}

async function rtuPlace(t: TestContext): Promise<Place> {
  const folder = mkdtempSync(join(tmpdir(), 'returns-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'serial');
  const wire = { path, baud: 115_200, dataBits: 8, parity: 'none', stopBits: 1 } as const;
  return { wire, serve: () => servePractice({ ...rig, over: 'rtu', path }) };
}

for (const { name, placeOf, skip } of [
  { name: 'Modbus TCP', placeOf: tcpPlace, skip: false },
  { name: 'Modbus RTU', placeOf: rtuPlace, skip: missing('socat') },
])
  test(`a ${name} device that is switched on later is found then, and again after it was away`, { skip }, async (t) => {
    const { wire, serve } = await placeOf(t);
    const { sink, readings, troubles, state } = heard();
    const register = { kind: 'holding', type: 'float32', wordOrder: 'high first', scale: 1, shift: 0 } as const;
    const source = modbusRegisters({
      wire,
      device: 1,
      registers: [{ ...register, channel: 'force', address: 10 }],
      channels: [{ name: 'force', unit: 'kN' }],
      every_s: 0.02,
    });
    await source.start(sink);
    t.after(() => source.stop());
    await until(() => troubles.length > 0);
    assert.match(troubles[0] ?? '', /cannot be reached/);
    for (const time of [1, 2]) {
      const before = readings.length;
      const device = await serve();
      device.start();
      await until(() => readings.length > before + 4);
      await device.stop();
      assert.ok(
        readings.length > before + 4,
        `${readings.length - before} readings, time ${time}: ${troubles.join(' ')}`,
      );
      assert.equal(state.practice, time);
      await until(() => troubles.filter((words) => words.includes('was lost')).length === time);
    }
  });
