import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { TraceReading, TraceSignals } from '../../src/trace/index.ts';
import { readSignals } from '../../src/trace/index.ts';
import type { PullPlan } from './pull-simulator.ts';
import { noisy, simulatePull, thinned } from './pull-simulator.ts';

const dips = [
  { at_mm: 3.05, drop_kN: 1.5 },
  { at_mm: 9.02, drop_kN: 2.5 },
  { at_mm: 16.01, drop_kN: 1.2 },
];

/** Pulls that part at the top, after a soft decline, in the elastic part, and after a last dip. */
const PULLS: Readonly<Record<string, PullPlan>> = {
  hardening: { dips },
  'soft decline': { dips, softening_mm: 17, parting_mm: 22.03 },
  brittle: { dips: dips.slice(0, 1), yield_kN: 60, parting_mm: 8.017 },
  'last dip': { dips: [...dips, { at_mm: 22.507, drop_kN: 2 }], zero_kN: 0.31, parting_mm: 24.013 },
};

interface Version {
  readonly name: string;
  readonly signals: TraceSignals;
  readonly step_s: number;
}

function versions(signals: TraceSignals): Version[] {
  return [
    { name: '1 kHz', signals, step_s: 0.001 },
    { name: '50 Hz', signals: thinned(signals, 20), step_s: 0.02 },
    { name: '10 Hz', signals: thinned(signals, 100), step_s: 0.1 },
    ...[11, 12, 13].map((seed) => ({
      name: `1 % noise, seed ${seed}`,
      signals: noisy(signals, 0.01, seed),
      step_s: 0.001,
    })),
  ];
}

function kinds(reading: TraceReading): string {
  return reading.events.map((event) => event.kind).join(' ');
}

for (const [name, plan] of Object.entries(PULLS)) {
  const pull = simulatePull(plan);
  for (const version of versions(pull.signals)) {
    const reading = readSignals(version.signals);

    test(`${name}, ${version.name}: the maximum lies within its expanded uncertainty`, () => {
      const off = Math.abs((reading.maximumForce_kN ?? Number.NaN) - pull.maximum_kN);
      assert.ok(
        off <= 2 * (reading.maximumForceUncertainty_kN ?? 0) + 1e-9,
        `${off} against ${reading.maximumForceUncertainty_kN}`,
      );
      assert.ok((reading.maximumForceUncertainty_kN ?? 1) < 0.006 * pull.maximum_kN);
    });

    test(`${name}, ${version.name}: the parting time is found within two samples`, () => {
      assert.ok(Math.abs((reading.timeAtParting_s ?? Number.NaN) - pull.parting_s) <= 2 * version.step_s + 1e-9);
    });

    test(`${name}, ${version.name}: the events are those put in, in their places`, () => {
      assert.equal(kinds(reading), [...(plan.dips ?? []).map(() => 'dip'), 'parted'].join(' '));
      (plan.dips ?? []).forEach((dip, i) => {
        const event = reading.events[i];
        const due_s = (dip.at_mm + 6) / 0.5;
        // On a flat stretch noise moves the place of a local maximum by up to a second; its drop by 0.4 kN.
        assert.ok(Math.abs((event?.time_s ?? 0) - due_s) < 1, `${event?.time_s} against ${due_s}`);
        assert.ok(Math.abs((event?.drop_kN ?? 0) - dip.drop_kN) < 0.4);
      });
    });

    test(`${name}, ${version.name}: the stiffness put in lies within the interval or 1.5 % of it`, () => {
      const interval = reading.stiffnessInterval95_kN_per_mm ?? { lower: Number.NaN, upper: Number.NaN };
      assert.ok(
        interval.lower <= pull.stiffness_kN_per_mm * 1.015 && interval.upper >= pull.stiffness_kN_per_mm * 0.985,
      );
    });
  }
}

test('energy and extensions are the same at 1 kHz, 50 Hz and 10 Hz within 0.5 %', () => {
  const pull = simulatePull({ dips });
  const [full, ...others] = versions(pull.signals)
    .slice(0, 3)
    .map((version) => readSignals(version.signals, { links: 5, pitch_mm: 24 }));
  assert.ok(full);
  for (const other of others) {
    for (const key of [
      'energyToMaximum_J',
      'energyToParting_J',
      'extensionAtParting_mm',
      'totalUltimateElongation_pct',
      'tableSpeed_mm_per_min',
    ] as const) {
      assert.ok(Math.abs((other[key] ?? 0) / (full[key] ?? Number.NaN) - 1) < 0.005, key);
    }
  }
});

test('at 10 kHz the reading is the one at 1 kHz', () => {
  const plan = { dips: dips.slice(0, 2), parting_mm: 12.01 };
  const fast = simulatePull({ ...plan, rate_Hz: 10_000 });
  const slow = readSignals(thinned(fast.signals, 10));
  const reading = readSignals(fast.signals);
  assert.equal(kinds(reading), kinds(slow));
  assert.ok(Math.abs((reading.maximumForce_kN ?? 0) - fast.maximum_kN) < 1e-9);
  assert.ok(Math.abs((reading.timeAtParting_s ?? 0) - fast.parting_s) <= 0.0002);
  assert.ok(Math.abs((reading.stiffness_kN_per_mm ?? 0) / (slow.stiffness_kN_per_mm ?? 1) - 1) < 0.001);
});
