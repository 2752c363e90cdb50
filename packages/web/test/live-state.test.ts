import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { LiveMessage } from '@provinghouse/contract';
import type { WatchView } from '@provinghouse/core';
import { cuesBetween } from '../src/features/rig/cue.ts';
import { type LiveState, nothingTold, told } from '../src/features/rig/live-state.ts';

const armed = (pull: string): LiveMessage => ({
  kind: 'armed',
  pull,
  piece: 'ASH-8-1',
  rig: 'RIG-1',
  isPractice: false,
  at: '2026-03-10T08:00:00Z',
});
const samples = (received: number, ...forces: readonly number[]): LiveMessage => ({
  kind: 'samples',
  samples: forces.map((force_kN, i) => ({ time_s: received + i / 10, force_kN, table_mm: null, extension_mm: null })),
  received,
  rejected: 0,
});
const after = (...messages: readonly LiveMessage[]): LiveState => messages.reduce(told, nothingTold);

test('before the start a force is shown and nothing of it enters the curve', () => {
  const state = after(armed('P-1'), samples(0, 0.4));
  assert.equal(state.force_kN, 0.4);
  assert.deepEqual(state.forces_kN, []);
});

test('a new arming begins a new story', () => {
  const mark: LiveMessage = { kind: 'mark', time_s: 1, words: 'bang' };
  const state = after(armed('P-1'), samples(2, 1, 2), mark, armed('P-2'));
  assert.equal(state.armed?.pull, 'P-2');
  assert.deepEqual([state.forces_kN, state.marks, state.view], [[], [], null]);
});

test('a long curve is thinned and keeps its extremes', () => {
  const batches = Array.from({ length: 200 }, (_, i) =>
    samples(i + 1, ...Array.from({ length: 50 }, (_, j) => i + j / 50)),
  );
  const state = after(armed('P-1'), ...batches);
  assert.ok(state.forces_kN.length <= 6000);
  assert.equal(Math.max(...state.forces_kN), 199.98);
  assert.equal(Math.min(...state.forces_kN), 0);
  assert.equal(state.times_s.length, state.forces_kN.length);
});

// Only the members the cues look at.
const view = (stage: WatchView['stage'], passed: number) =>
  ({
    stage,
    passed: Array.from({ length: passed }, () => ({ name: 'proof', force_kN: 20, time_s: 1 })),
  }) as unknown as WatchView;

test('each happening sounds once, and who comes late hears nothing of what was before', () => {
  assert.deepEqual(cuesBetween(null, view('parted', 2)), []);
  assert.deepEqual(cuesBetween(view('elastic', 0), view('plastic', 1)), ['rule']);
  assert.deepEqual(cuesBetween(view('plastic', 1), view('near maximum', 2)), ['rule', 'near']);
  assert.deepEqual(cuesBetween(view('near maximum', 2), view('near maximum', 2)), []);
  assert.deepEqual(cuesBetween(view('past maximum', 2), view('parted', 2)), ['parted']);
});

test('how far the keeping is stands there while it lasts, and no longer', () => {
  const keeping = (share: number): LiveMessage => ({ kind: 'keeping', share });
  assert.equal(after(armed('P-1'), samples(2, 1, 2), keeping(0), keeping(0.4)).keeping, 0.4);
  assert.equal(after(keeping(0.4), keeping(1)).keeping, null);
  assert.equal(after(keeping(0.4), armed('P-2')).keeping, null);
});
