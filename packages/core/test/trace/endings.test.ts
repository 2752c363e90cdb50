import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { TraceSignals } from '../../src/trace/index.ts';
import { readSignals } from '../../src/trace/index.ts';
import { noisy, simulatePull, stepped, thinned } from './pull-simulator.ts';

function changed(signals: TraceSignals, change: (force: number, i: number) => number): TraceSignals {
  return { ...signals, force_kN: signals.force_kN.map(change) };
}

function near(actual: number | null, expected: number, tolerance: number): void {
  assert.ok(
    actual !== null && Math.abs(actual - expected) <= tolerance,
    `${actual} is not within ${tolerance} of ${expected}`,
  );
}

const pull = simulatePull();
const at100Hz = thinned(pull.signals, 10);

test('a force that stands at its limit is clipped: an event, and the maximum is at least', () => {
  for (const signals of [pull.signals, at100Hz, thinned(pull.signals, 100)]) {
    const reading = readSignals(changed(signals, (force) => Math.min(force, 22.5)));
    assert.equal(reading.maximumForce_kN, 22.5);
    assert.equal(reading.maximumIsAtLeast, true);
    assert.equal(reading.parted, true);
    assert.ok(reading.events.some((event) => event.kind === 'plateau at range limit'));
  }
});

test('a stated range maximum that is reached is a limit too, even through noise', () => {
  const signals = noisy(
    changed(at100Hz, (force) => Math.min(force, 22.5)),
    0.001,
    4,
  );
  const reading = readSignals(
    changed(signals, (force) => Math.min(force, 22.5)),
    { rig: { rangeMaximum_kN: 22.5 } },
  );
  assert.equal(reading.maximumIsAtLeast, true);
});

test('a long flat top in coarse steps is the own top of the piece, not a limit', () => {
  const { signals } = simulatePull({ softening_mm: 14, parting_mm: 20, rate_Hz: 100 });
  const reading = readSignals(stepped(signals, 0.1));
  assert.equal(reading.maximumIsAtLeast, false);
  assert.ok(!reading.events.some((event) => event.kind === 'plateau at range limit'));
});

test('a record that stops before parting has not parted, and its maximum is at least', () => {
  const reading = readSignals(simulatePull({ stopBefore_s: 4 }).signals);
  assert.equal(reading.parted, false);
  assert.equal(reading.maximumIsAtLeast, true);
  assert.equal(reading.valid, true);
  assert.equal(reading.events.at(-1)?.kind, 'end of record');
  assert.equal(reading.partingForce_kN, null);
  assert.equal(reading.energyToParting_J, null);
  assert.equal(reading.totalUltimateElongation_pct, null);
});

test('a pull that is run back slowly has not parted', () => {
  const { signals } = simulatePull({ stopBefore_s: 4, rate_Hz: 100 });
  const count = signals.force_kN.length;
  const last = signals.force_kN[count - 1] ?? 0;
  const back = Float64Array.from({ length: 800 }, (_, i) => Math.max(0, last - 0.05 * i));
  const reading = readSignals({
    ...signals,
    force_kN: Float64Array.from([...signals.force_kN, ...back]),
    time_s: Float64Array.from({ length: count + 800 }, (_, i) => i / 100),
    table_mm: Float64Array.from([...(signals.table_mm ?? []), ...back.map((force) => 20 + force / 5)]),
  });
  assert.equal(reading.parted, false);
});

test('of two local maxima the later and greater is the maximum; the earlier is an event that was regained', () => {
  const { signals, maximum_kN } = simulatePull({ dips: [{ at_mm: 12, drop_kN: 4 }] });
  const reading = readSignals(signals);
  near(reading.maximumForce_kN, maximum_kN, 1e-9);
  const [dip] = reading.events;
  assert.equal(dip?.regained, true);
  near(dip?.drop_kN ?? null, 4, 0.15);
  near(dip?.time_s ?? null, 36, 0.01);
  assert.ok((reading.timeAtMaximum_s ?? 0) > 50);
});

test('a slip that loses more than half and is regained is no parting', () => {
  const { signals, parting_s } = simulatePull({ dips: [{ at_mm: 6, drop_kN: 12 }], rate_Hz: 200 });
  const reading = readSignals(signals);
  near(reading.timeAtParting_s, parting_s, 0.01);
  assert.deepEqual(
    reading.events.map((event) => event.kind),
    ['slip', 'parted'],
  );
});

test('after a soft decline the maximum comes long before parting, and the parting force is the last one held', () => {
  const { signals, parting_s, maximum_kN } = simulatePull({ softening_mm: 14, parting_mm: 22 });
  const reading = readSignals(signals);
  near(reading.timeAtParting_s, parting_s, 0.002);
  assert.ok((reading.timeAtMaximum_s ?? 0) < parting_s - 5);
  assert.ok((reading.partingForce_kN ?? 99) < 0.9 * maximum_kN);
  assert.ok((reading.energyToParting_J ?? 0) > (reading.energyToMaximum_J ?? 0));
});

test('spikes are rejected one by one, listed with time and value, and do not make the maximum', () => {
  const spikes = new Map([
    [20_000, 55],
    [45_000, 31.5],
    [45_001, 33],
    [59_990, 28.5],
  ]);
  const reading = readSignals(changed(pull.signals, (force, i) => spikes.get(i) ?? force));
  assert.deepEqual(
    reading.spikes,
    [...spikes].map(([i, force_kN]) => ({ time_s: i / 1000, force_kN })),
  );
  near(reading.maximumForce_kN, pull.maximum_kN, 1e-9);
  assert.ok(reading.notes.some((note) => note.includes('4 readings were rejected')));
});

test('a spike on the last reading before parting, and a signal that drops out to zero, are rejected', () => {
  const reading = readSignals(
    changed(pull.signals, (force, i) => (i === 60_000 ? 40 : i >= 50_000 && i < 50_004 ? 0 : force)),
  );
  assert.equal(reading.spikes.length, 5);
  near(reading.maximumForce_kN, pull.maximum_kN, 1e-3);
  assert.deepEqual(
    reading.events.map((event) => event.kind),
    ['parted'],
  );
});

test('more than one loaded reading in a hundred rejected makes the pull invalid', () => {
  const reading = readSignals(
    changed(at100Hz, (force, i) => (i > 2000 && i % 50 === 0 && i < 5900 ? force + 15 : force)),
  );
  assert.equal(reading.valid, false);
});

test('a zero offset is taken off when slack shows it, and a preload is not', () => {
  const offset = simulatePull({ zero_kN: 0.42, rate_Hz: 100 });
  const reading = readSignals(offset.signals);
  near(reading.zeroForce_kN, 0.42, 1e-6);
  near(reading.maximumForce_kN, offset.maximum_kN, 1e-6);
  const start = 1000;
  const held = 300;
  const cut = (values: Float64Array | null): Float64Array =>
    Float64Array.from(
      { length: held + (values?.length ?? 0) - start },
      (_, i) => values?.[Math.max(start, start + i - held)] ?? 0,
    );
  const preloaded = readSignals({
    ...offset.signals,
    force_kN: cut(simulatePull({ slack_mm: 4, rate_Hz: 100 }).signals.force_kN),
    table_mm: cut(offset.signals.table_mm),
    time_s: Float64Array.from(cut(offset.signals.force_kN), (_, i) => i / 100),
  });
  assert.equal(preloaded.zeroForce_kN, null);
  assert.ok(preloaded.notes.some((note) => note.includes('may be a preload')));
});

test('a halt of the machine is a pause where it began', () => {
  const { signals } = simulatePull({ rate_Hz: 50 });
  const at = 50 * 20;
  const still = 50 * 6;
  const hold = (values: Float64Array | null): Float64Array =>
    Float64Array.from(
      { length: (values?.length ?? 0) + still },
      (_, i) => values?.[i < at ? i : Math.max(at, i - still)] ?? 0,
    );
  const time_s = Float64Array.from({ length: signals.force_kN.length + still }, (_, i) => i / 50);
  const held = { ...signals, time_s, force_kN: hold(signals.force_kN), table_mm: hold(signals.table_mm) };
  for (const record of [held, { ...held, table_mm: null }]) {
    const pauses = readSignals(record).events.filter((event) => event.kind === 'pause');
    assert.equal(pauses.length, 1);
    near(pauses[0]?.time_s ?? null, 20, 0.6);
  }
});

test('a gap at the maximum makes it at least; repeated rows and gaps are events', () => {
  const keep = (i: number): boolean => i < 5500 || i > 5990;
  const cut = (values: Float64Array | null): Float64Array | null =>
    values === null ? null : values.filter((_, i) => keep(i));
  const soft = thinned(simulatePull({ softening_mm: 22, parting_mm: 25 }).signals, 10);
  const reading = readSignals({
    ...soft,
    time_s: cut(soft.time_s),
    force_kN: soft.force_kN.filter((_, i) => keep(i)),
    table_mm: cut(soft.table_mm),
  });
  assert.equal(reading.maximumIsAtLeast, true);
  assert.ok(reading.events.some((event) => event.kind === 'gap'));
  const twice = (values: Float64Array | null): Float64Array =>
    Float64Array.from([...(values?.subarray(0, 3001) ?? []), ...(values?.subarray(3000) ?? [])]);
  const repeated = readSignals({
    ...at100Hz,
    time_s: twice(at100Hz.time_s),
    force_kN: twice(at100Hz.force_kN),
    table_mm: twice(at100Hz.table_mm),
  });
  assert.deepEqual(
    repeated.events.map((event) => event.kind),
    ['repeat', 'parted'],
  );
});

test('without a time there is a maximum and a stiffness, and neither rates nor placed events', () => {
  const reading = readSignals({ ...at100Hz, time_s: null });
  near(reading.maximumForce_kN, pull.maximum_kN, 1e-3);
  assert.equal(reading.parted, true);
  assert.deepEqual(
    [
      reading.duration_s,
      reading.sampleRate_Hz,
      reading.timeAtMaximum_s,
      reading.forceRate_kN_per_s,
      reading.tableSpeed_mm_per_min,
    ],
    [null, null, null, null, null],
  );
  assert.deepEqual(reading.events, []);
});

test('without a travel there are no stiffness, extension and energy; nothing is NaN or undefined', () => {
  const reading = readSignals({ ...at100Hz, table_mm: null }, { area_mm2: 100, links: 5, pitch_mm: 24 });
  assert.equal(reading.stiffness_kN_per_mm, null);
  assert.equal(reading.energyToParting_J, null);
  near(reading.meanStressAtMaximum_N_per_mm2, pull.maximum_kN * 10, 1e-2);
  for (const [name, value] of Object.entries(reading)) assert.ok(value !== undefined && !Number.isNaN(value), name);
});

test('a known compliance of the rig is taken off the table, and then the stiffness is that of the piece', () => {
  const table_mm = at100Hz.table_mm?.map((travel, i) => travel + 0.04 * (at100Hz.force_kN[i] ?? 0)) ?? null;
  const reading = readSignals({ ...at100Hz, table_mm }, { rig: { compliance_mm_per_kN: 0.04 } });
  near(reading.stiffness_kN_per_mm, readSignals(at100Hz).stiffness_kN_per_mm ?? 0, 0.001);
  assert.ok(reading.notes.some((note) => note.includes('0.04 mm/kN')));
});

test('elongation is the extension at parting over the sum of the inside lengths; the plastic part leaves the elastic out', () => {
  const reading = readSignals(pull.signals, { links: 5, pitch_mm: 24 });
  // Parting comes 24 mm past slack; half of the 1 mm toe lies before the elastic line meets zero.
  near(reading.extensionAtParting_mm, 23.5, 0.05);
  near(reading.totalUltimateElongation_pct, (23.5 / 120) * 100, 0.05);
  near(reading.plasticExtension_mm, 23.5 - pull.maximum_kN / 5, 0.05);
  near(reading.tableSpeed_mm_per_min, 30, 0.01);
  near(reading.forceRate_kN_per_s, 2.5, 0.05);
  near(reading.timeAtEndOfSlack_s ?? null, 12, 0.3);
});

test('the share of time inside the rate limits is judged, and a pull mostly outside is invalid', () => {
  const inside = readSignals(at100Hz, { rateLimits: { tableSpeed_mm_per_min: [25, 35] } });
  near(inside.shareInsideRateLimits, 1, 1e-9);
  const outside = readSignals(at100Hz, { rateLimits: { tableSpeed_mm_per_min: [35, 50] } });
  near(outside.shareInsideRateLimits, 0, 1e-9);
  assert.equal(outside.valid, false);
});

test('the uncertainty of the maximum joins class, resolution, noise and sampling', () => {
  const clean = readSignals(stepped(pull.signals, 0.01), { rig: { classPct: 1 } });
  near(
    clean.maximumForceUncertainty_kN,
    Math.hypot((0.01 * (clean.maximumForce_kN ?? 0)) / Math.sqrt(3), 0.01 / Math.sqrt(12)),
    1e-4,
  );
  const coarse = readSignals(pull.signals, { rig: { resolution_kN: 0.5 } });
  near(coarse.maximumForceUncertainty_kN, 0.5 / Math.sqrt(12), 1e-4);
});

test('the largest noisy reading is not taken for the maximum, and the note says so', () => {
  const signals = noisy(pull.signals, 0.01, 21);
  const raw = signals.force_kN.reduce((a, b) => Math.max(a, b), 0);
  const reading = readSignals(signals);
  assert.ok(raw - pull.maximum_kN > 0.4, 'the raw maximum is biased');
  near(reading.maximumForce_kN, pull.maximum_kN, 2 * (reading.maximumForceUncertainty_kN ?? 0));
  assert.ok(reading.notes.some((note) => note.includes('fitted parabola')));
});

test('what rings after parting moves neither the parting nor the maximum', () => {
  const ringing = changed(pull.signals, (force, i) => {
    const after_s = i / 1000 - pull.parting_s;
    return after_s <= 0 ? force : 25 * Math.exp(-after_s / 0.05) * Math.cos(2 * Math.PI * 40 * after_s);
  });
  const reading = readSignals(ringing);
  near(reading.timeAtParting_s, pull.parting_s, 0.002);
  near(reading.maximumForce_kN, pull.maximum_kN, 1e-6);
});

test('mains hum is noise: it makes no dips and does not lift the maximum beyond its uncertainty', () => {
  const reading = readSignals(changed(pull.signals, (force, i) => force + 0.1 * Math.sin(2 * Math.PI * 0.05 * i)));
  near(reading.maximumForce_kN, pull.maximum_kN, 2 * (reading.maximumForceUncertainty_kN ?? 0));
  assert.deepEqual(
    reading.events.map((event) => event.kind),
    ['parted'],
  );
});

test('readings held by a slow sensor under a fast logger are no spikes', () => {
  const held = changed(pull.signals, (_, i) => pull.signals.force_kN[Math.floor(i / 10) * 10] ?? 0);
  const reading = readSignals(held);
  assert.equal(reading.spikes.length, 0);
  assert.equal(reading.maximumIsAtLeast, false);
  near(reading.maximumForce_kN, pull.maximum_kN, 2 * (reading.maximumForceUncertainty_kN ?? 0));
});

test('a proof pull that is held and run back is a pause, not a limit, and has not parted', () => {
  const up = simulatePull({ stopBefore_s: 20, rate_Hz: 50 }).signals;
  const top = up.force_kN.at(-1) ?? 0;
  const table = up.table_mm?.at(-1) ?? 0;
  const force_kN = Float64Array.from([
    ...up.force_kN,
    ...Array.from({ length: 900 }, (_, i) => Math.max(0, Math.min(top, top * (1 - (i - 400) / 400)))),
  ]);
  const table_mm = Float64Array.from([
    ...(up.table_mm ?? []),
    ...Array.from({ length: 900 }, (_, i) => Math.min(table, table - (i - 400) / 100)),
  ]);
  const reading = readSignals({ ...up, force_kN, table_mm, time_s: force_kN.map((_, i) => i / 50) });
  assert.deepEqual(
    reading.events.map((event) => event.kind),
    ['pause', 'end of record'],
  );
  assert.equal(reading.parted, false);
  assert.equal(reading.maximumForce_kN, top);
});
