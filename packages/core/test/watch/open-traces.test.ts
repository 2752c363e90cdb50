import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { parseTrace } from '../../src/trace/index.ts';
import { operatorStop, startWatch, step, viewOf } from '../../src/watch/index.ts';
import { plain, samplesOf, watch } from './watched.ts';

// Outside check: 24 tensile tests of steel (CC BY 4.0), see reference/open-traces/README.md. They end while the bars neck.
const folder = join(import.meta.dirname, '../reference/open-traces');
const records = readdirSync(folder)
  .filter((name) => name.endsWith('.csv') && name !== 'published-results.csv')
  .map((name) => ({ name, samples: samplesOf(parseTrace(readFileSync(join(folder, name)))) }));

test('every open trace passes each stage once and in order, upper yield points and all, and is past its maximum at its end', () => {
  assert.equal(records.length, 24);
  for (const { name, samples } of records) {
    const { stages, view } = watch(samples);
    assert.deepEqual(stages, ['slack', 'take-up', 'elastic', 'plastic', 'near maximum', 'past maximum'], name);
    assert.equal(view.ended, null, name);
    assert.deepEqual(view.doubts, [], name);
  }
});

test('no maximum of a bar that only necks is called final, at any moment, whoever stops the watch', () => {
  for (const { name, samples } of records) {
    const state = startWatch(plain);
    for (const sample of samples) {
      step(state, sample);
      assert.equal(viewOf(state).maximumAccepted_kN, null, name);
    }
    operatorStop(state, samples.at(-1)?.time_s ?? 0);
    assert.equal(viewOf(state).ended, 'operator');
    assert.equal(viewOf(state).maximumAccepted_kN, null, name);
    assert.equal(
      viewOf(state).maximumSoFar_kN,
      samples.reduce((most, { force_kN }) => Math.max(most, force_kN), 0),
      name,
    );
  }
});

test('an agreed drop of 10 % makes the maximum of each final', () => {
  for (const { name, samples } of records) {
    const { view } = watch(samples, { ...plain, agreedDrop_pct: 10 });
    assert.equal(view.ended, 'agreed drop', name);
    assert.equal(view.maximumAccepted_kN, view.maximumSoFar_kN, name);
  }
});

test('the 90 % interval of every forecast, at whatever moment before the maximum, holds the maximum in at least 85 % of the moments', () => {
  for (const { name, samples } of records) {
    const top = samples.reduce((best, sample) => (sample.force_kN > best.force_kN ? sample : best));
    const state = startWatch(plain);
    let given = 0;
    let held = 0;
    for (const sample of samples) {
      if (sample.time_s > top.time_s) break;
      const { forecast } = viewOf(step(state, sample));
      if (!forecast) continue;
      given++;
      if (forecast.lower90_kN <= top.force_kN && top.force_kN <= forecast.upper90_kN) held++;
    }
    assert.ok(given > 20, `${name}: ${given} forecasts`);
    assert.ok(held >= 0.85 * given, `${name}: ${held} of ${given}`);
  }
});
