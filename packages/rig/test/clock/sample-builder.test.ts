import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { WatchSample } from '@provinghouse/core';
import fc from 'fast-check';
import { type ClockedSource, type Gap, sampleBuilder } from '../../src/clock/sample-builder.ts';
import type { RawReading, SourceClock } from '../../src/source/source.ts';

const source = (
  describe: string,
  clock: SourceClock,
  ...names: ('force' | 'table' | 'extension')[]
): ClockedSource => ({
  describe,
  clock,
  channels: names.map((name) => ({ name, signal: name })),
});

function reading(channel: string, value: number, time_s: number, arrival_s = time_s): RawReading {
  return { channel, value, time_s, arrival_s, quality: 'good' };
}

function watched(sources: readonly ClockedSource[]) {
  const gaps: Gap[] = [];
  const jumps: number[] = [];
  const builder = sampleBuilder(sources, {
    gap: (gap) => void gaps.push(gap),
    clockJump: (_, jumped_s) => void jumps.push(jumped_s),
  });
  return { builder, gaps, jumps };
}

test('force and table of one line make one sample at once', () => {
  const { builder } = watched([source('panel', 'free', 'force', 'table')]);
  const samples = builder.add(0, [reading('force', 5, 0), reading('table', 1, 0)]);
  assert.deepEqual(samples, [{ time_s: 0, force_kN: 5, table_mm: 1, extension_mm: null }]);
});

test('a slower table from another clock is laid between its own readings', () => {
  const { builder } = watched([source('cell', 'own', 'force'), source('table', 'own', 'table')]);
  const samples: WatchSample[] = [];
  for (let i = 0; i <= 3000; i++) {
    const true_s = i * 0.001;
    samples.push(...builder.add(0, [reading('force', true_s, 500 + true_s, true_s + 0.001)]));
    if (i % 100 === 0) samples.push(...builder.add(1, [reading('table', 2 * true_s, 9000 + true_s, true_s + 0.001)]));
  }
  samples.push(...builder.flush());
  assert.equal(samples.length, 3001);
  const inside = samples.filter(({ time_s }) => time_s > 0.01 && time_s < 2.9);
  for (const { time_s, force_kN, table_mm } of inside) {
    assert.ok(Math.abs(force_kN + 0.001 - time_s) < 1e-6);
    assert.ok(Math.abs((table_mm ?? Number.NaN) - 2 * force_kN) < 1e-6, `${table_mm} at ${time_s}`);
  }
});

test('a table that falls silent is waited for 0.25 s, held for 1 s and then absent; the force goes on', () => {
  const { builder } = watched([source('cell', 'arrival', 'force'), source('table', 'arrival', 'table')]);
  builder.add(1, [reading('table', 7, 0)]);
  const samples: WatchSample[] = [];
  for (let i = 0; i <= 300; i++) samples.push(...builder.add(0, [reading('force', 1, i * 0.01)]));
  assert.ok(samples.length > 270);
  assert.ok(samples.every(({ time_s, table_mm }) => table_mm === (time_s <= 1 ? 7 : null)));
});

test('lost readings on a source with its own clock are a gap of their length', () => {
  const { builder, gaps } = watched([source('cell', 'own', 'force')]);
  for (let i = 0; i < 2000; i++)
    if (i < 1000 || i >= 1010) builder.add(0, [reading('force', 1, i * 0.001, i * 0.001 + 0.002)]);
  assert.equal(gaps.length, 1);
  assert.ok(Math.abs((gaps[0]?.to_s ?? 0) - (gaps[0]?.from_s ?? 0) - 0.011) < 1e-6);
});

test('a source that becomes ten times slower is a few gaps, not one for ever', () => {
  const { builder, gaps } = watched([source('cell', 'own', 'force')]);
  for (let i = 0; i < 100; i++) builder.add(0, [reading('force', 1, i * 0.01)]);
  for (let i = 0; i < 100; i++) builder.add(0, [reading('force', 1, 1 + i * 0.1)]);
  assert.ok(gaps.length > 0 && gaps.length < 8, String(gaps.length));
});

test('two lines laid at one time keep each its own table', () => {
  const { builder } = watched([source('panel', 'own', 'force', 'table')]);
  const line = (k: number, arrival_s: number) => [
    reading('force', k, k * 0.001, arrival_s),
    reading('table', 2 * k, k * 0.001, arrival_s),
  ];
  // The second chunk comes quicker than the first, so the offset falls and times are held.
  const samples = [
    ...builder.add(0, line(0, 0.02)),
    ...builder.add(
      0,
      [1, 2, 3, 4].flatMap((k) => line(k, 0.005)),
    ),
  ];
  assert.deepEqual(
    samples.map(({ force_kN, table_mm }) => [force_kN, table_mm]),
    [0, 1, 2, 3, 4].map((k) => [k, 2 * k]),
  );
});

test('however readings are batched, the samples are the same', () => {
  const all = Array.from({ length: 400 }, (_, i) => [
    reading('force', i, 10 + i * 0.005, i * 0.005 + 0.001),
    reading('table', i / 2, 10 + i * 0.005, i * 0.005 + 0.001),
  ]);
  const make = (sizes: readonly number[]) => {
    const { builder } = watched([source('panel', 'own', 'force', 'table')]);
    const samples: WatchSample[] = [];
    let at = 0;
    for (let i = 0; at < all.length; i++) {
      const size = 1 + (sizes[i % sizes.length] ?? 0);
      samples.push(...builder.add(0, all.slice(at, at + size).flat()));
      at += size;
    }
    return [...samples, ...builder.flush()];
  };
  const property = fc.property(fc.array(fc.nat(40), { minLength: 1, maxLength: 20 }), (sizes) => {
    assert.deepEqual(make(sizes), make([0]));
  });
  fc.assert(property, { seed: 7, numRuns: 50 });
});
