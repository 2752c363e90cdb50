import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, type TestContext, test } from 'node:test';
import { setTimeout } from 'node:timers/promises';
import { type PracticeWire, type ServePracticeOptions, servePractice } from '@provinghouse/rig/practice';
import { campaignRows } from '@provinghouse/store';
import { missing, startBroker } from '../../../rig/test/practice/program.ts';
import { judgeCampaign } from '../../src/index.ts';
import { readKit } from '../../src/pull/index.ts';
import { armInput, openBench, storyUntil } from './bench.ts';
import { exampleAt, exampleKinds, type WirePlace } from './how-to.ts';

const rig = 'PRACTICE-RIG';

/** One link, pulled briskly: some twenty seconds, here in five. */
const brisk = {
  seed: 3,
  chain: { links: 1 },
  valve: { approach_mm_per_min: 150, takeUp_mm_per_min: 14, main_mm_per_min: 28, idle_s: 0.5 },
  speed: 5,
  startWhen: 'told',
  after_s: 4,
} as const;

/** A bench whose one rig is wired as the page shows, at the place where the practice rig is. */
async function benchAt(t: TestContext, kind: string, place: WirePlace) {
  const kit = mkdtempSync(join(tmpdir(), 'provinghouse-kit-'));
  t.after(() => rmSync(kit, { recursive: true, force: true }));
  mkdirSync(join(kit, 'kit'));
  writeFileSync(join(kit, 'kit', `${rig}.json`), exampleAt(kind, place));
  return openBench(t, await readKit(kit));
}

async function laid(t: TestContext, options: ServePracticeOptions): Promise<PracticeWire> {
  const wire = await servePractice(options);
  t.after(() => wire.stop());
  return wire;
}

interface Carried {
  readonly kind: string;
  readonly wire: PracticeWire;
  readonly place: WirePlace;
  readonly leastShare?: number;
}

/** Carries a pull through the desk into the record and holds what is judged against what the simulator knows. */
async function carried(t: TestContext, { kind, wire, place, leastShare = 1 }: Carried): Promise<void> {
  const { desks, effects } = await benchAt(t, kind, place);
  await desks.arm(rig, armInput('PRACTICE-8-1'));
  // A real rig talks before the start as well; here it is only time for the connection.
  await setTimeout(300);
  await desks.start(rig);
  wire.start();
  const end = (await storyUntil(desks, rig, 'ended')).at(-1);
  assert.ok(end?.kind === 'ended' && end.sha256 !== null, (await desks.desk(rig))?.pull?.fault ?? 'not ended');
  assert.equal(end.view.ended, 'parted');
  assert.ok(end.samples >= leastShare * 100 * (end.view.time_s - 4), `${end.samples} samples`);

  const { pulls } = await campaignRows(effects.store, 'PRACTICE');
  assert.match(pulls[0]?.note ?? '', /^PRACTICE: simulated/, 'the wire said that it is practice');
  const finding = await judgeCampaign({ campaign: 'PRACTICE' }, effects);
  const pull = finding.pieces.find(({ piece }) => piece === 'PRACTICE-8-1')?.pull;
  assert.equal(pull?.use, 'value');
  assert.equal(pull?.traceSha256, end.sha256);
  const { value, expandedUncertainty } = pull?.maximum ?? { value: Number.NaN, expandedUncertainty: 0 };
  const { maximumForce_kN } = wire.truth();
  const off = Math.abs(value - maximumForce_kN);
  assert.ok(off <= (expandedUncertainty ?? 0), `${value} against ${maximumForce_kN} kN, U ${expandedUncertainty} kN`);
}

test('the page shows a file for each kind of wire', () => {
  assert.deepEqual(exampleKinds.toSorted(), ['modbus rtu', 'modbus tcp', 'mqtt', 'serial lines', 'tcp lines']);
});

describe('a pull over a real wire, wired as the page shows, is sealed in the record and its reading is the truth', {
  concurrency: 3,
  timeout: 90_000,
}, () => {
  for (const rate_Hz of [100, 1000])
    test(`lines over TCP at ${rate_Hz} Hz`, async (t) => {
      const wire = await laid(t, { ...brisk, over: 'tcp', rate_Hz });
      await carried(t, { kind: 'tcp lines', wire, place: { host: '127.0.0.1', port: wire.port } });
    });

  test('lines over a serial port at 100 Hz', { skip: missing('socat') }, async (t) => {
    const wire = await laid(t, { ...brisk, over: 'pty', rate_Hz: 100 });
    await carried(t, { kind: 'serial lines', wire, place: { path: wire.address } });
  });

  test('registers over Modbus TCP at 100 Hz', async (t) => {
    const wire = await laid(t, { ...brisk, over: 'modbus', rate_Hz: 100 });
    await carried(t, { kind: 'modbus tcp', wire, place: { host: '127.0.0.1', port: wire.port } });
  });

  test('registers over Modbus RTU, the values of the moment', { skip: missing('socat') }, async (t) => {
    const wire = await laid(t, { ...brisk, speed: 1, after_s: 30, over: 'rtu', rate_Hz: 100 });
    await carried(t, { kind: 'modbus rtu', wire, place: { path: wire.address }, leastShare: 0.01 });
  });

  test('topics of a Mosquitto at 100 Hz', { skip: missing('mosquitto') }, async (t) => {
    const broker = await startBroker();
    const wire = await laid(t, { ...brisk, over: 'mqtt', broker: broker.url, rate_Hz: 100 });
    // After the wire, which takes its mark off the broker when it goes.
    t.after(() => broker.stop());
    await carried(t, { kind: 'mqtt', wire, place: { broker: broker.url } });
  });
});
