import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { startWatch, step, tick, viewOf, type WatchSample } from '../../src/watch/index.ts';
import { noisy, simulatePull, thinned } from '../trace/pull-simulator.ts';
import { changed, plain, samplesOf, watch } from './watched.ts';

const pull = simulatePull({ rate_Hz: 50, softening_mm: 20, dips: [{ at_mm: 5, drop_kN: 2 }], after_s: 2 });
const samples = samplesOf(noisy(pull.signals, 0.0005, 3));

test('a pull gives the same view however it is cut into batches, looked at and ticked in between', () => {
  const whole = watch(samples).view;
  const cuts = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 40 });
  const property = fc.property(cuts, (sizes) => {
    const state = startWatch(plain);
    let at = 0;
    for (let k = 0; at < samples.length; k++) {
      const batch = samples.slice(at, at + (sizes[k % sizes.length] ?? 1));
      for (const sample of batch) step(state, sample);
      tick(state, batch.at(-1)?.time_s ?? 0);
      viewOf(state);
      at += batch.length;
    }
    assert.deepEqual(viewOf(state), whole);
  });
  fc.assert(property, { seed: 7, numRuns: 20 });
});

test('a cloned state goes on as the first would have', () => {
  const state = startWatch(plain);
  for (const sample of samples.slice(0, 1500)) step(state, sample);
  const before = viewOf(state);
  const copy = structuredClone(state);
  for (const sample of samples.slice(1500)) step(copy, sample);
  assert.deepEqual(viewOf(copy), watch(samples).view);
  assert.deepEqual(viewOf(state), before);
});

/** Anything a wire may bring: readings of any size, spikes, jumps of time. */
const anything = fc.array(
  fc.record({
    wait_s: fc.oneof(fc.constant(0.02), fc.constant(0.1), fc.double({ min: 0, max: 5, noNaN: true })),
    force_kN: fc.oneof(
      fc.double({ min: -5, max: 60, noNaN: true }),
      fc.constantFrom(0, 10, 20, 1e9, -1e9),
      fc.double({ min: -1e11, max: 1e11, noNaN: true }),
    ),
    table_mm: fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
  }),
  { minLength: 1, maxLength: 300 },
);

test('whatever comes, the maximum so far never falls, none is accepted before an end, and no number of the view is NaN', () => {
  const property = fc.property(anything, fc.option(fc.double({ min: 1, max: 60, noNaN: true })), (readings, drop) => {
    const state = startWatch({ ...plain, agreedDrop_pct: drop, tableSpeedLimits_mm_per_min: [5, 60] });
    let time_s = 0;
    let before = Number.NEGATIVE_INFINITY;
    for (const { wait_s, force_kN, table_mm } of readings) {
      time_s += wait_s;
      step(state, { time_s, force_kN, table_mm, extension_mm: null });
      const view = viewOf(state);
      const maximum = view.maximumSoFar_kN ?? Number.NEGATIVE_INFINITY;
      assert.ok(maximum >= before, `${maximum} after ${before}`);
      before = maximum;
      if (view.ended === null) assert.equal(view.maximumAccepted_kN, null);
      for (const [name, value] of Object.entries(view)) assert.ok(!Number.isNaN(value), name);
      for (const value of Object.values(view.forecast ?? {})) assert.ok(!Number.isNaN(value));
    }
  });
  fc.assert(property, { seed: 7, numRuns: 150 });
});

test('scaling every force scales the forces of the view and leaves times, stages and shares alone', () => {
  const options = { ...plain, ruleLines: [{ name: 'proof', force_kN: 12 }], rangeMaximum_kN: 50 };
  const cut = samples.filter(({ time_s }) => time_s < 50);
  const { view, stages } = watch(cut, options);
  assert.ok(view.forecast, 'there is a forecast to scale');
  // Powers of two scale floating numbers without rounding, so that everything must agree to the last bit.
  const property = fc.property(fc.integer({ min: -8, max: 12 }), (power) => {
    const by = 2 ** power;
    const scaled = watch(
      changed(cut, ({ force_kN }) => ({ force_kN: force_kN * by })),
      { ...plain, ruleLines: [{ name: 'proof', force_kN: 12 * by }], rangeMaximum_kN: 50 * by },
    );
    assert.deepEqual(scaled.stages, stages);
    assert.equal(scaled.view.maximumSoFar_kN, (view.maximumSoFar_kN ?? 0) * by);
    assert.equal(scaled.view.rateOverElastic, view.rateOverElastic);
    assert.equal(scaled.view.passed[0]?.time_s, view.passed[0]?.time_s);
    assert.equal(scaled.view.forecast?.upper90_kN, (view.forecast?.upper90_kN ?? 0) * by);
    assert.equal(scaled.view.forecast?.timeToMaximum_s, view.forecast?.timeToMaximum_s);
  });
  fc.assert(property, { seed: 7, numRuns: 12 });
});

test('thinned from 1 kHz to 50 Hz, the maximum so far stays within the noise and the stages come in the same order', () => {
  const share = 0.0004;
  const plan = fc.record({
    stiffness_kN_per_mm: fc.double({ min: 3, max: 9, noNaN: true }),
    yield_kN: fc.double({ min: 12, max: 30, noNaN: true }),
    slack_mm: fc.double({ min: 2, max: 6, noNaN: true }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  });
  const property = fc.property(plan, ({ seed, ...chain }) => {
    const fine = simulatePull({ ...chain, speed_mm_per_s: 1, softening_mm: 20, after_s: 2 });
    const signals = noisy(fine.signals, share, seed);
    const noise_kN = share * fine.maximum_kN;
    const dense = watch(samplesOf(signals));
    const sparse = watch(samplesOf(thinned(signals, 20)));
    assert.deepEqual(sparse.stages, dense.stages);
    const off = Math.abs((dense.view.maximumSoFar_kN ?? 0) - (sparse.view.maximumSoFar_kN ?? 0));
    assert.ok(off < 5 * noise_kN, `${off} kN with noise ${noise_kN} kN`);
  });
  fc.assert(property, { seed: 7, numRuns: 6 });
});

test('memory stays bounded: after an hour of readings the state is as large as after a minute', () => {
  const size = (seconds: number): number => {
    const state = startWatch({ ...plain, silence_s: 20 });
    for (let i = 0; i < seconds * 10; i++) {
      const sample: WatchSample = { time_s: i / 10, force_kN: 5 + (i % 7), table_mm: i / 100, extension_mm: null };
      step(state, sample);
      step(state, { ...sample, time_s: i / 10 - 1 });
    }
    return JSON.stringify(state, (_, value) => (typeof value === 'number' ? 0 : value)).length;
  };
  assert.ok(size(3600) < 1.05 * size(60));
});
