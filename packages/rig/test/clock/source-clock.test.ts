import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { arrivalSpread } from '../../src/clock/arrival-spread.ts';
import { freeClock, sourceClock } from '../../src/clock/source-clock.ts';

/** Delays of a line that is mostly quick: 5 ms and an exponential rest. */
function delays(seed: number, count: number): number[] {
  let state = seed;
  return Array.from({ length: count }, () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return 0.005 - 0.01 * Math.log(1 - state / 2147483648);
  });
}

test('a clock that is off by a year and drifts by 50 ppm is followed to a few milliseconds', () => {
  const clock = sourceClock();
  const late = delays(3, 60_000);
  let worst_s = 0;
  for (let i = 0; i < 60_000; i++) {
    const true_s = i * 0.01;
    const time_s = 3.15e7 + true_s * 1.00005;
    const placed = clock.place(time_s, true_s + (late[i] ?? 0));
    // The shortest way, 5 ms here, cannot be told from the clock's offset.
    if (true_s > 10) worst_s = Math.max(worst_s, Math.abs(placed.time_s - true_s - 0.005));
    assert.equal(placed.jumped_s, null);
  }
  assert.ok(worst_s < 0.004, `${worst_s} s`);
});

test('times never run backwards, whatever the clock and the arrivals do', () => {
  const step = fc.tuple(fc.double({ min: -5, max: 5, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }));
  const property = fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
    for (const make of [sourceClock, freeClock]) {
      const clock = make();
      let [time_s, arrival_s, last_s] = [100, 7, Number.NEGATIVE_INFINITY];
      for (const [dt, da] of steps) {
        time_s += dt;
        arrival_s += da;
        const placed = clock.place(time_s, arrival_s);
        assert.ok(placed.time_s >= last_s);
        last_s = placed.time_s;
      }
    }
  });
  fc.assert(property, { seed: 7, numRuns: 500 });
});

test('a burst after a stall keeps its own times and is no jump', () => {
  const clock = sourceClock();
  for (let i = 0; i < 300; i++) clock.place(i * 0.01, i * 0.01 + 0.002);
  const burst = Array.from({ length: 100 }, (_, i) => clock.place(3 + i * 0.01, 4.5));
  assert.ok(burst.every(({ jumped_s }) => jumped_s === null));
  assert.ok(burst.every(({ time_s }, i) => Math.abs(time_s - (3.002 + i * 0.01)) < 0.004));
  assert.ok((burst[0]?.delay_s ?? 0) > 1.4);
});

for (const jump_s of [-2, -0.02, 0.5, 3600])
  test(`a clock moved by ${jump_s} s is said to have jumped by that much, and time goes on`, () => {
    const clock = sourceClock();
    for (let i = 0; i < 300; i++) clock.place(i * 0.01, i * 0.01 + 0.002);
    const placed = clock.place(3 + jump_s, 3.002);
    assert.ok(Math.abs((placed.jumped_s ?? 0) - jump_s) < 0.003, String(placed.jumped_s));
    const next = clock.place(3.01 + jump_s, 3.012);
    assert.equal(next.jumped_s, null);
    assert.ok(Math.abs(next.time_s - 3.012) < 0.003);
  });

test('readings of one chunk are spread over the time since the chunk before, and after a stall at their usual distance', () => {
  const spread = arrivalSpread();
  spread.times(10, 1);
  for (let i = 1; i <= 20; i++) spread.times(10, 1 + i * 0.1);
  const even = [...spread.times(10, 3.1)];
  assert.ok(even.every((time_s, i) => Math.abs(time_s - (3.01 + i * 0.01)) < 1e-9));
  const late = [...spread.times(10, 13.1)];
  assert.equal(late.at(-1), 13.1);
  assert.ok((late[0] ?? 0) > 12.99);
});
