import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { isInputError } from '../../src/errors.ts';
import { operatorStop, startWatch, step, tick, viewOf } from '../../src/watch/index.ts';
import { noisy, simulatePull, thinned } from '../trace/pull-simulator.ts';
import { changed, hesitating, plain, samplesOf, watch } from './watched.ts';

const pull = simulatePull({ rate_Hz: 100, softening_mm: 20, after_s: 5 });
const noise_kN = 0.0004 * pull.maximum_kN;
const samples = samplesOf(noisy(pull.signals, 0.0004, 5));
const until = (time_s: number) => samples.filter((sample) => sample.time_s < time_s);

function near(actual: number | null | undefined, expected: number, tolerance: number): void {
  assert.ok(typeof actual === 'number' && Math.abs(actual - expected) <= tolerance, `${actual}, not ${expected}`);
}

test('a plain pull passes slack, take-up, elastic, plastic, near and past maximum, and parts', () => {
  const { view, stages } = watch(samples);
  assert.deepEqual(stages, ['slack', 'take-up', 'elastic', 'plastic', 'near maximum', 'past maximum', 'parted']);
  assert.equal(view.ended, 'parted');
  assert.equal(view.maximumAccepted_kN, view.maximumSoFar_kN);
  near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
  assert.deepEqual(view.doubts, []);
  assert.equal(view.forecast, null);
});

test('before the first sample there is nothing to show, and a tick ends nothing', () => {
  const view = viewOf(tick(startWatch(plain), 100));
  assert.deepEqual(
    [view.stage, view.ended, view.maximumSoFar_kN, view.forecast, view.rateOfRise_kN_per_s, view.tableSpeed_mm_per_min],
    ['slack', null, null, null, null, null],
  );
});

test('the elastic rate is that of the chain, so that the rate of rise over it is 1 in the elastic part', () => {
  const { view, state } = watch(until(17));
  assert.equal(view.stage, 'elastic');
  near(view.rateOverElastic, 1, 0.05);
  near(state.memory.elasticRate, pull.stiffness_kN_per_mm, 0.3);
  near(view.rateOfRise_kN_per_s, 0.5 * pull.stiffness_kN_per_mm, 0.1);
});

test('without a table rates are per second, the forecast goes by time, and there is neither speed nor warning near the maximum', () => {
  const { view, stages } = watch(changed(samples, () => ({ table_mm: null })));
  assert.equal(view.ended, 'parted');
  assert.equal(view.tableSpeed_mm_per_min, null);
  assert.equal(stages.at(-1), 'parted');
  assert.ok(!stages.includes('near maximum'));
  const { forecast } = watch(changed(until(50), () => ({ table_mm: null }))).view;
  assert.ok(forecast && forecast.lower90_kN <= pull.maximum_kN && pull.maximum_kN <= forecast.upper90_kN);
});

test('a table that runs the other way is as good', () => {
  const back = watch(changed(samples, ({ table_mm }) => ({ table_mm: 100 - (table_mm ?? 0) })));
  assert.deepEqual(back.stages, watch(samples).stages);
});

for (const [what, reading] of [
  ['force that is NaN', { force_kN: Number.NaN }],
  ['force without end', { force_kN: Number.POSITIVE_INFINITY }],
  ['force beyond all measure', { force_kN: 1e300 }],
  ['time that is NaN', { time_s: Number.NaN }],
] as const) {
  test(`a ${what} is refused and changes nothing`, () => {
    const { state, view } = watch(until(25));
    assert.throws(
      () => step(state, { time_s: 25, force_kN: 10, table_mm: 1, extension_mm: null, ...reading }),
      (error) => isInputError(error) && error.code === 'watch/reading-not-a-number',
    );
    assert.deepEqual(viewOf(state), view);
  });
}

test('a table that is NaN counts as not read', () => {
  const gappy = watch(changed(samples, (_, i) => (i % 3 === 0 ? { table_mm: Number.NaN } : {})));
  assert.equal(gappy.view.ended, 'parted');
  assert.equal(gappy.stages.includes('plastic'), true);
});

for (const [what, wrong] of [
  ['an agreed drop of 120 %', { agreedDrop_pct: 120 }],
  ['no seconds of silence', { silence_s: 0 }],
  ['a range of zero', { rangeMaximum_kN: 0 }],
  ['a window of speeds upside down', { tableSpeedLimits_mm_per_min: [30, 10] as const }],
  ['a rule line that is no number', { ruleLines: [{ name: 'proof', force_kN: Number.NaN }] }],
] as const) {
  test(`${what} is refused`, () => {
    assert.throws(
      () => startWatch({ ...plain, ...wrong }),
      (error) => isInputError(error) && error.code === 'watch/option-out-of-range',
    );
  });
}

test('a time before the last sample leaves the sample out, with a doubt', () => {
  const { state } = watch(until(30));
  step(state, { time_s: 3, force_kN: 99, table_mm: 1, extension_mm: null });
  const view = viewOf(state);
  assert.ok((view.maximumSoFar_kN ?? 99) < 30);
  assert.ok(view.doubts.some((doubt) => doubt.includes('before the last one')));
});

test('a force that runs below zero raises the doubt of a swapped sign, and never a stage', () => {
  const { view, stages } = watch(changed(samples, ({ force_kN }) => ({ force_kN: -force_kN })));
  assert.deepEqual(stages, ['slack']);
  assert.equal(view.ended, null);
  assert.ok(view.doubts.some((doubt) => doubt.includes('sign')));
});

test('noise about zero is no swapped sign', () => {
  assert.deepEqual(watch(until(10)).view.doubts, []);
});

test('a value that stands still to the last digit raises a doubt, and ends nothing', () => {
  const { view } = watch(changed(until(40), ({ time_s }) => (time_s > 30 ? { force_kN: 21.2345 } : {})));
  assert.equal(view.ended, null);
  assert.equal(view.maximumAccepted_kN, null);
  assert.ok(view.doubts.some((doubt) => doubt.includes('21.23 kN') && doubt.includes('stuck')));
});

test('a plateau at the end of the range is beyond it, doubted, and accepted by no end but parting', () => {
  const options = { ...plain, rangeMaximum_kN: 22 };
  const clipped = changed(samples, ({ force_kN }) => ({ force_kN: Math.min(force_kN, 22) }));
  const { view } = watch(
    clipped.filter(({ time_s }) => time_s < 50),
    options,
  );
  assert.equal(view.rangeGuard, 'beyond');
  assert.equal(view.maximumAccepted_kN, null);
  assert.ok(view.doubts.some((doubt) => doubt.includes('range')));
  assert.ok(view.doubts.some((doubt) => doubt.includes('limit of what the rig can show')));
});

test('the range guard is near from nine tenths of the lesser limit', () => {
  const guard = (rangeMaximum_kN: number, fixtureLimit_kN: number | null) =>
    watch(until(40), { ...plain, rangeMaximum_kN, fixtureLimit_kN }).view.rangeGuard;
  const force = watch(until(40)).view.force_kN;
  assert.equal(guard(2 * force, null), 'clear');
  assert.equal(guard(force * 1.05, null), 'near');
  assert.equal(guard(2 * force, force * 1.05), 'near');
  assert.equal(guard(2 * force, force * 0.9), 'beyond');
});

test('of two peaks the later and greater is the maximum, and the dip between them is counted once', () => {
  const two = simulatePull({ rate_Hz: 100, dips: [{ at_mm: 14, drop_kN: 5 }], after_s: 3 });
  const { view, stages } = watch(samplesOf(noisy(two.signals, 0.0004, 5)));
  assert.equal(view.dips, 1);
  near(view.maximumAccepted_kN, two.maximum_kN, 0.05);
  assert.equal(stages.filter((stage) => stage === 'past maximum').length, 0);
});

test('a hesitating valve leaves the stage as it was, with and without a fall of the force', () => {
  for (const relaxes_kN of [0, 0.4]) {
    for (const from_s of [18, 35]) {
      const { view, stages } = watch(hesitating(samples, { from_s, lasts_s: 8, relaxes_kN }));
      assert.deepEqual(stages, ['slack', 'take-up', 'elastic', 'plastic', 'near maximum', 'past maximum', 'parted']);
      near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
    }
  }
});

test('a fall that is regained after seconds takes the fall back', () => {
  const sag = (time_s: number): number => (time_s > 40 && time_s < 46 ? 0.06 * (time_s - 40) : 0);
  const sagging = changed(samples, ({ time_s, force_kN }) => ({ force_kN: force_kN * (1 - sag(time_s)) }));
  const { view, stages } = watch(sagging);
  assert.ok(stages.indexOf('past maximum') < stages.lastIndexOf('near maximum'), stages.join(', '));
  near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
});

test('one lone reading does not become the maximum, at 10, 100 and 1000 Hz', () => {
  const fine = simulatePull({ rate_Hz: 1000, softening_mm: 20, after_s: 3 });
  for (const every of [1, 10, 100]) {
    const base = samplesOf(noisy(thinned(fine.signals, every), 0.0004, 5));
    const spiked = changed(base, ({ force_kN }, i) =>
      i % Math.floor(12_345 / every) === 99 ? { force_kN: force_kN + 12 } : {},
    );
    const { view } = watch(spiked);
    near(view.maximumAccepted_kN, fine.maximum_kN, 6 * noise_kN);
    assert.ok(view.doubts.some((doubt) => doubt.includes('spike')));
  }
});

test('a signal that drops out to zero for one reading is no parting', () => {
  const { view, stages } = watch(changed(until(45), (_, i) => (i === 3500 ? { force_kN: 0 } : {})));
  assert.equal(view.ended, null);
  assert.ok(!stages.includes('parted'));
});

test('a unit changed in mid-pull is doubted', () => {
  const { view } = watch(
    changed(until(40), ({ time_s, force_kN }) => (time_s > 30 ? { force_kN: force_kN * 1000 } : {})),
  );
  assert.ok(view.doubts.some((doubt) => doubt.includes('another unit')));
});

test('a load that went on while nothing was read is no change of unit', () => {
  const half = samples.find(({ force_kN }) => force_kN > 0.5 * pull.maximum_kN)?.time_s ?? 0;
  const back = samples.find(({ force_kN }) => force_kN > 0.9 * pull.maximum_kN)?.time_s ?? 0;
  const { view } = watch(samples.filter(({ time_s }) => time_s < half || (time_s > back && time_s < back + 2)));
  assert.ok(back - half > 1, 'the gap is longer than a second');
  assert.ok(
    view.doubts.every((doubt) => !doubt.includes('another unit')),
    view.doubts.join(' '),
  );
});

test('rule lines are passed once, in order, at their time, and the next one is told with its distance', () => {
  const ruleLines = [
    { name: 'minimum', force_kN: 22 },
    { name: 'proof', force_kN: 10 },
    { name: 'hoped for', force_kN: 40 },
  ];
  const { view } = watch(until(45), { ...plain, ruleLines });
  assert.deepEqual(
    view.passed.map(({ name }) => name),
    ['proof', 'minimum'],
  );
  const first = samples.find(({ force_kN }) => force_kN >= 10);
  assert.equal(view.passed[0]?.time_s, first?.time_s);
  assert.equal(view.next?.name, 'hoped for');
  near(view.next?.distance_kN, 40 - view.force_kN, 1e-12);
});

test('the table speed is held against its window, and the share of the loaded time outside is kept', () => {
  const inside = watch(until(45), { ...plain, tableSpeedLimits_mm_per_min: [25, 35] }).view;
  near(inside.tableSpeed_mm_per_min, 30, 0.2);
  assert.equal(inside.isSpeedInside, true);
  assert.equal(inside.shareOutsideSpeed, 0);
  const slow = hesitating(until(45), { from_s: 30, lasts_s: 10, relaxes_kN: 0 });
  const outside = watch(slow, { ...plain, tableSpeedLimits_mm_per_min: [25, 35] }).view;
  // Loaded from about 12 s to 55 s, 10 s of it at a standstill.
  near(outside.shareOutsideSpeed, 10 / 43, 0.02);
});

test('the operator ends the pull: no maximum is accepted, and later readings change nothing', () => {
  const { state } = watch(until(40));
  operatorStop(state, 40);
  const before = viewOf(state);
  assert.equal(before.ended, 'operator');
  assert.equal(before.maximumAccepted_kN, null);
  for (const sample of samples.filter(({ time_s }) => time_s >= 40)) step(state, sample);
  const after = viewOf(state);
  assert.equal(after.maximumSoFar_kN, before.maximumSoFar_kN);
  assert.equal(after.ended, 'operator');
  assert.ok(after.doubts.some((doubt) => doubt.includes('After the end')));
});

test('an operator who stops at once after the bang ends a pull that has parted', () => {
  const { state } = watch(until(pull.parting_s + 0.8));
  assert.equal(viewOf(state).maximumAccepted_kN, null);
  operatorStop(state, pull.parting_s + 0.8);
  assert.equal(viewOf(state).ended, 'parted');
  near(viewOf(state).maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
});

test('silence ends the pull without an accepted maximum, and a source that comes back takes it up again with the gap told', () => {
  const { state } = watch(until(40));
  assert.equal(viewOf(tick(state, 41.9)).ended, null);
  assert.equal(viewOf(tick(state, 42.1)).ended, 'silence');
  assert.equal(viewOf(state).maximumAccepted_kN, null);
  for (const sample of samples.filter(({ time_s }) => time_s >= 45)) step(state, sample);
  const view = viewOf(state);
  assert.equal(view.ended, 'parted');
  assert.ok(view.doubts.some((doubt) => doubt.includes('No reading for')));
});

test('an agreed drop ends the pull and accepts the maximum; a deeper dip that is regained does not', () => {
  const soft = simulatePull({
    rate_Hz: 100,
    softening_mm: 14,
    parting_mm: 24,
    dips: [{ at_mm: 8, drop_kN: 5 }],
    after_s: 3,
  });
  const { view, stages } = watch(samplesOf(noisy(soft.signals, 0.0004, 5)), { ...plain, agreedDrop_pct: 10 });
  assert.equal(view.ended, 'agreed drop');
  assert.equal(stages.at(-1), 'past maximum');
  near(view.maximumAccepted_kN, soft.maximum_kN, 5 * noise_kN);
  assert.equal(view.dips, 1);
});

test('a slip that lets go of nearly everything is not shown as parted while the force rises again', () => {
  const slip = simulatePull({ rate_Hz: 100, dips: [{ at_mm: 5, drop_kN: 16.5 }], after_s: 3 });
  const { view, stages } = watch(samplesOf(noisy(slip.signals, 0.0004, 5)));
  near(view.maximumAccepted_kN, slip.maximum_kN, 0.05);
  assert.equal(view.ended, 'parted');
  assert.equal(stages.at(-1), 'parted');
  assert.equal(stages.filter((stage) => stage === 'parted').length, 1);
  assert.ok(!view.doubts.some((doubt) => doubt.includes('withdrawn')));
});

test('a slip after which the force stays away while the table moves on is shown as parted, but not final, and is taken back', () => {
  const gone = (time_s: number): boolean => time_s > 30 && time_s < 33;
  const { view, stages } = watch(
    changed(samples, ({ time_s }, i) => (gone(time_s) ? { force_kN: 0.01 * (i % 3) } : {})),
  );
  assert.equal(stages.filter((stage) => stage === 'parted').length, 2);
  assert.equal(view.ended, 'parted');
  near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
  assert.ok(!view.doubts.some((doubt) => doubt.includes('withdrawn')));
});

test('before the knee a slip that lets go of everything for a second is not shown as parted', () => {
  for (const lasts_s of [1, 1.4]) {
    const gone = (time_s: number): boolean => time_s > 17 && time_s < 17 + lasts_s;
    const { view, stages } = watch(
      changed(samples, ({ time_s }, i) => (gone(time_s) ? { force_kN: 0.01 * (i % 3) } : {})),
    );
    assert.equal(stages.filter((stage) => stage === 'parted').length, 1);
    near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
  }
});

test('a true parting is shown within a second, at 10, 100 and 1000 Hz, with and without a table', () => {
  const fine = simulatePull({ rate_Hz: 1000, softening_mm: 20, after_s: 2 });
  for (const every of [1, 10, 100]) {
    const all = samplesOf(noisy(thinned(fine.signals, every), 0.0004, 5));
    const seen = all.filter(({ time_s }) => time_s <= fine.parting_s + 1);
    for (const record of [seen, changed(seen, () => ({ table_mm: null }))]) {
      assert.equal(watch(record).view.stage, 'parted', `${1000 / every} Hz`);
    }
  }
});

test('without a table a force that relaxes is no fall past the maximum, however long, and one that falls ever faster is', () => {
  const blind = changed(samples, () => ({ table_mm: null }));
  for (const from_s of [18, 35]) {
    const { stages } = watch(hesitating(blind, { from_s, lasts_s: 12, relaxes_kN: 0.9 }));
    assert.ok(!stages.slice(0, stages.indexOf('parted')).includes('past maximum'), stages.join(', '));
  }
  const soft = simulatePull({ rate_Hz: 100, softening_mm: 18, after_s: 5 });
  const { stages } = watch(changed(samplesOf(noisy(soft.signals, 0.0004, 5)), () => ({ table_mm: null })));
  assert.ok(stages.includes('past maximum'), stages.join(', '));
});

test('a parting that was none is withdrawn when the force comes back, and the doubt stays', () => {
  const still = until(30);
  const last = still.at(-1);
  assert.ok(last);
  const gone = Array.from({ length: 400 }, (_, i) => ({ ...last, time_s: 30 + i / 100, force_kN: 0.001 * (i % 3) }));
  const { state } = watch([...still, ...gone]);
  assert.equal(viewOf(state).ended, 'parted');
  for (const sample of samples.filter(({ time_s }) => time_s >= 30))
    step(state, { ...sample, time_s: sample.time_s + 4 });
  const view = viewOf(state);
  assert.equal(view.ended, 'parted');
  near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
  assert.ok(view.doubts.some((doubt) => doubt.includes('withdrawn')));
});

test('a pull run back by hand is past its maximum and has not parted', () => {
  const up = until(45);
  const last = up.at(-1);
  assert.ok(last);
  const back = Array.from({ length: 900 }, (_, i) => ({
    ...last,
    time_s: 45 + i / 100,
    force_kN: Math.max(0, last.force_kN - 0.03 * i) + 0.001 * (i % 3),
    table_mm: (last.table_mm ?? 0) - 0.005 * i,
  }));
  const { view } = watch([...up, ...back]);
  assert.equal(view.ended, null);
  assert.equal(view.maximumAccepted_kN, null);
  assert.equal(view.stage, 'past maximum');
});

test('a link that snags while slack is taken up, and lets go, is neither a parting nor a stage that stays', () => {
  const bump = (time_s: number): number => (time_s > 5 && time_s < 6 ? 1.2 * (time_s - 5) : 0);
  const { view, stages } = watch(changed(samples, ({ time_s, force_kN }) => ({ force_kN: force_kN + bump(time_s) })));
  assert.deepEqual(stages.slice(-6), ['take-up', 'elastic', 'plastic', 'near maximum', 'past maximum', 'parted']);
  assert.ok(!stages.slice(0, -1).includes('parted'));
  near(view.maximumAccepted_kN, pull.maximum_kN, 5 * noise_kN);
});

test('a table that is lost in mid-pull is told, and the parting is still seen', () => {
  const { view } = watch(changed(samples, ({ time_s }) => (time_s > 40 ? { table_mm: null } : {})));
  assert.equal(view.ended, 'parted');
  assert.ok(view.doubts.some((doubt) => doubt.includes('The table was not read')));
  assert.equal(view.tableSpeed_mm_per_min, null);
});

test('the time after the parting does not count as time outside the window of the speed', () => {
  const { view } = watch(samples, { ...plain, tableSpeedLimits_mm_per_min: [25, 35] });
  near(view.shareOutsideSpeed, 0, 0.005);
});

describe('a brisk pull that is read three times a second', () => {
  // The elastic part lasts for a second or two.
  const brisk = simulatePull({ rate_Hz: 100, speed_mm_per_s: 2, softening_mm: 20, after_s: 5 });
  const seen = samplesOf(thinned(noisy(brisk.signals, 0.0004, 9), 30));
  const ruleLines = [{ name: 'minimum breaking force', force_kN: 0.8 * brisk.maximum_kN }];

  test('goes through elastic and plastic, and its maximum is accepted when it parts', () => {
    const { view, stages } = watch(seen, { ...plain, ruleLines });
    assert.ok(stages.indexOf('elastic') > 0 && stages.indexOf('plastic') > stages.indexOf('elastic'), `${stages}`);
    assert.equal(view.ended, 'parted');
    near(view.maximumAccepted_kN, brisk.maximum_kN, 0.005 * brisk.maximum_kN);
  });
});
