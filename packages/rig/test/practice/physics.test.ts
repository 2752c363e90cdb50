import assert from 'node:assert/strict';
import { test } from 'node:test';
import { isInputError, type WatchSample } from '@provinghouse/core';
import fc from 'fast-check';
import { type PracticeOptions, practicePull, startPractice, variedPractice } from '../../src/practice/index.ts';

const seeds = Array.from({ length: 16 }, (_, i) => i + 1);
/** A transducer without faults: what it shows is what is. */
const plainRig = {
  gainError_pct: 0,
  zero_kN: 0,
  noise_kN: 0,
  resolution_kN: 0,
  lag_s: 0,
  travelNoise_mm: 0,
  travelResolution_mm: 0,
} as const;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const maximumOf = (options: PracticeOptions) =>
  practicePull({ ...options, rate_Hz: 10, after_s: 0 }).truth.maximumForce_kN;

test('a longer chain is never stronger in the mean', () => {
  const means = [1, 3, 9, 18].map((links) =>
    mean(seeds.slice(0, 12).map((seed) => maximumOf({ seed, chain: { links, spread_pct: 3 } }))),
  );
  for (const [i, longer] of means.entries()) assert.ok(longer <= (means[i - 1] ?? longer), means.join(' '));
  assert.ok((means[3] ?? 0) < 0.97 * (means[0] ?? 0), 'with a spread of 3 % the length must tell');
});

test('the maximum is the weakest link’s: within 2.5 %, the effect of a hundredfold change of speed being 4 %', () => {
  for (const seed of seeds) {
    const { truth } = practicePull({ ...variedPractice(seed), rate_Hz: 10 });
    const ratio = truth.maximumForce_kN / truth.weakestStrength_kN;
    assert.ok(ratio > 0.975 && ratio < 1.025, `seed ${seed}: ${ratio}`);
    if (truth.mode === 'in grip') continue;
    const parted_kN = truth.strengths_kN[(truth.partedLink ?? 0) - 1] ?? Number.NaN;
    assert.ok(parted_kN <= 1.01 * Math.min(...truth.strengths_kN), `seed ${seed}: not the weakest link parted`);
  }
});

test('weak welds break at welds, sound ones in the bar, a nicked end in the grip', () => {
  const modes = (chain: PracticeOptions['chain']) =>
    new Set(seeds.slice(0, 8).map((seed) => practicePull({ seed, chain: { ...chain }, rate_Hz: 10 }).truth.mode));
  assert.deepEqual([...modes({ weldShare: 1 })].sort(), ['beside weld', 'weld']);
  assert.deepEqual([...modes({ weldShare: 0 })], ['bar']);
  assert.deepEqual([...modes({ weldShare: 0, gripStrength: 0.9 })], ['in grip']);
});

test('after parting the chain carries nothing: the reading dies away to the zero it had before', () => {
  for (const seed of seeds) {
    const { samples, truth } = practicePull({ seed, rig: plainRig, rate_Hz: 1000, after_s: 2 });
    const parting_s = truth.timeAtParting_s ?? Number.NaN;
    const after = samples.filter((s) => s.time_s > parting_s + 0.6);
    assert.ok(after.length > 1000);
    for (const sample of after) assert.ok(Math.abs(sample.force_kN) < 1e-4 * truth.maximumForce_kN);
    const ringing = samples.filter((s) => s.time_s > parting_s).map((s) => s.force_kN);
    assert.ok(Math.max(...ringing) < 0.06 * truth.maximumForce_kN, 'ringing is no second maximum');
  }
});

/** Work of the table up to parting, from the samples alone: force over travel by trapezoids. */
function workOf(samples: readonly WatchSample[], until_s: number): number {
  let work_J = 0;
  for (const [i, sample] of samples.entries()) {
    const before = samples[i - 1];
    if (!before || sample.time_s > until_s) continue;
    work_J += 0.5 * (sample.force_kN + before.force_kN) * ((sample.table_mm ?? 0) - (before.table_mm ?? 0));
  }
  return work_J;
}

test('the table’s work is what is stored and what flow and jumps took, within a per cent', () => {
  for (const seed of seeds) {
    const options = variedPractice(seed);
    const { samples, truth } = practicePull({ ...options, rig: { ...options.rig, ...plainRig }, rate_Hz: 200 });
    const { stored_J, dissipated_J } = truth.energy;
    const balance = workOf(samples, truth.timeAtParting_s ?? 0) / (stored_J + dissipated_J);
    assert.ok(Math.abs(balance - 1) < 0.01, `seed ${seed}: ${balance}`);
    assert.ok(stored_J > 0 && dissipated_J > stored_J, 'a ductile chain dissipates more than it stores');
  }
});

test('in the elastic part the links stretch by force over stiffness, whatever frame they hang in', () => {
  for (const compliance_mm_per_kN of [0.002, 0.05]) {
    const rig = { ...plainRig, compliance_mm_per_kN };
    const { samples, truth } = practicePull({ seed: 3, chain: { jumps: [] }, rig, rate_Hz: 100 });
    const at = (share: number) => samples.find((s) => s.force_kN > share * truth.weakestStrength_kN);
    const [low, high] = [at(0.27), at(0.31)];
    assert.ok(low && high);
    const slope = (high.force_kN - low.force_kN) / ((high.extension_mm ?? 0) - (low.extension_mm ?? 0));
    // Contacts still bed in a little at three tenths of the strength, so the slope lies somewhat below.
    const ratio = slope / truth.stiffnessOfLinks_kN_per_mm;
    assert.ok(ratio < 1 && ratio > 0.93, `${ratio}`);
  }
});

test('the same seed gives the same pull, another seed another', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
      const options = { ...variedPractice(seed), rate_Hz: 20 };
      const pull = practicePull(options);
      assert.deepEqual(practicePull(options), pull);
      assert.notDeepEqual(practicePull({ ...options, seed: seed + 1 }).samples, pull.samples);
    }),
    { seed: 7, numRuns: 5 },
  );
});

test('a pull sampled more thinly is the same pull: same truth, and where both have a sample the same value', () => {
  for (const seed of seeds.slice(0, 6)) {
    const options = { ...variedPractice(seed), after_s: 1 };
    const rig = { ...options.rig, noise_kN: 0, travelNoise_mm: 0 };
    const dense = practicePull({ ...options, rig, rate_Hz: 1000 });
    const thin = practicePull({ ...options, rig, rate_Hz: 10 });
    assert.deepEqual(thin.truth, dense.truth);
    for (const [i, sample] of thin.samples.entries()) {
      const same = dense.samples[100 * i];
      assert.ok(same && Math.abs(same.time_s - sample.time_s) < 1e-9);
      const step_kN = rig.resolution_kN ?? 0;
      assert.ok(Math.abs(same.force_kN - sample.force_kN) <= step_kN * 1.001, `${sample.time_s} s`);
      assert.ok(Math.abs((same.table_mm ?? 0) - (sample.table_mm ?? 0)) <= 0.01001);
    }
  }
});

test('samples do not depend on how the time was divided', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 1, maxLength: 40 }), (strides) => {
      const whole = startPractice({ seed: 5, rate_Hz: 100 });
      const parts = startPractice({ seed: 5, rate_Hz: 100 });
      const got = strides.flatMap((stride) => parts.advance(stride));
      const total = strides.reduce((sum, stride) => sum + stride, 0);
      assert.deepEqual(got, whole.advance(total));
    }),
    { seed: 7, numRuns: 15 },
  );
});

test('the valve is the user’s: shut it stands still, opened it runs, swings past its order and settles near it', () => {
  const session = startPractice({
    seed: 2,
    valve: 'closed',
    rate_Hz: 100,
    rig: { ...plainRig, wander: 0, damping: 0.4 },
  });
  assert.ok(session.advance(5).every((s) => s.table_mm === 0 && s.force_kN === 0));
  session.turnValve(60);
  const samples = session.advance(3);
  const speeds = samples.slice(1).map((s, i) => 6000 * ((s.table_mm ?? 0) - (samples[i]?.table_mm ?? 0)));
  assert.ok(Math.max(...speeds) > 1.15 * 60, 'no overshoot');
  assert.ok(Math.abs(mean(speeds.slice(-50)) - 60) < 3);
  session.turnValve(0);
  session.advance(3);
  const still = session.advance(1);
  assert.ok(Math.abs((still.at(-1)?.table_mm ?? 0) - (still[0]?.table_mm ?? 1)) < 0.05);
  assert.equal(session.hasParted(), false);
});

test('a held valve lets the force sag, and opening it again brings a higher maximum', () => {
  const session = startPractice({ seed: 4, valve: 'closed', rig: plainRig });
  session.turnValve(40);
  while (session.truth().maximumForce_kN < 0.9 * session.truth().weakestStrength_kN) session.advance(0.1);
  session.turnValve(0);
  session.advance(2);
  const held = session.advance(20);
  const before = session.truth().maximumForce_kN;
  assert.ok((held.at(-1)?.force_kN ?? 0) < (held[0]?.force_kN ?? 0), 'no relaxation');
  session.turnValve(40);
  while (!session.hasParted()) session.advance(0.5);
  assert.ok(session.truth().maximumForce_kN > before);
});

test('noise, step, zero, gain and end of range are those of the transducer', () => {
  const rig = { noise_kN: 0.05, resolution_kN: 0.02, zero_kN: 0.4, gainError_pct: 1, rangeMaximum_kN: 40, lag_s: 0 };
  const idle = startPractice({ seed: 1, valve: 'closed', rig })
    .advance(60)
    .map((s) => s.force_kN);
  const sd = Math.sqrt(mean(idle.map((f) => (f - mean(idle)) ** 2)));
  assert.ok(Math.abs(mean(idle) - 0.4) < 0.01);
  // Gaussian cut at three standard deviations, then rounded to steps of 0.02.
  assert.ok(sd > 0.046 && sd < 0.053, `${sd}`);
  const pull = practicePull({ seed: 1, rig, rate_Hz: 100 });
  assert.ok(pull.truth.maximumForce_kN > 41);
  assert.equal(Math.max(...pull.samples.map((s) => s.force_kN)), 40);
  for (const { force_kN } of pull.samples) assert.ok(Math.abs(force_kN * 50 - Math.round(force_kN * 50)) < 1e-6);
});

test('a lagging transducer shows a steady rise late by its lag', () => {
  const pull = (lag_s: number) =>
    practicePull({ seed: 6, chain: { jumps: [] }, rig: { ...plainRig, lag_s }, rate_Hz: 1000 });
  const [sharp, late] = [pull(0), pull(0.05)];
  const i = sharp.samples.findIndex((s) => s.force_kN > 10);
  assert.ok(i > 0);
  assert.ok(Math.abs((late.samples[i + 50]?.force_kN ?? 0) - (sharp.samples[i]?.force_kN ?? 1)) < 0.02);
});

const refused: readonly [string, () => unknown][] = [
  ['practice/option', () => startPractice({ seed: 1.5 })],
  ['practice/option', () => startPractice({ seed: 1, chain: { links: 0 } })],
  ['practice/option', () => startPractice({ seed: 1, chain: { links: 2.5 } })],
  ['practice/option', () => startPractice({ seed: 1, chain: { size_mm: Number.NaN } })],
  ['practice/option', () => startPractice({ seed: 1, rate_Hz: 20_000 })],
  ['practice/time', () => startPractice({ seed: 1 }).advance(-1)],
  ['practice/valve', () => startPractice({ seed: 1 }).turnValve(Number.NaN)],
  ['practice/closed', () => practicePull({ seed: 1, valve: 'closed' })],
  ['practice/unparted', () => practicePull({ seed: 1, longest_s: 5 })],
];

for (const [i, [code, attempt]] of refused.entries()) {
  test(`what cannot be built is refused as ${code} (${i + 1})`, () => {
    assert.throws(attempt, (error) => isInputError(error) && error.code === code);
  });
}
