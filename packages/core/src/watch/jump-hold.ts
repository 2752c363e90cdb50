import type { WatchSample } from './state.ts';

/**
 * Holds back a reading that jumps, until it is known whether it stands alone. A jump is a step of over eight times the noise and over
 * four times the steps of late. One that returns within 20 ms, or at the very next reading, was a spike (common practice); one
 * that stays was real.
 */
export interface JumpHold {
  /** Last reading believed. */
  time_s: number;
  force_kN: number;
  count: number;
  /** Size of the steps of late: running mean. */
  usualStep_kN: number;
  /** What is held back, oldest first; at most `MOST_HELD`. */
  readonly held: WatchSample[];
  rejected: number;
  firstRejected_s: number | null;
  firstRejected_kN: number | null;
}

const SPIKE_S = 0.02;
const TIMES_STEP = 4;
const MOST_HELD = 256;
const STEP_MEMORY = 32;
const HELD_MEMORY = 8;
const FEWEST = 8;

export function startJumpHold(): JumpHold {
  return {
    time_s: Number.NaN,
    force_kN: 0,
    count: 0,
    usualStep_kN: 0,
    held: [],
    rejected: 0,
    firstRejected_s: null,
    firstRejected_kN: null,
  };
}

/** Whether a reading is a jump from the last one believed; `level_kN` is what a jump must pass at the least. */
export function isJump(hold: JumpHold, sample: WatchSample, level_kN: number): boolean {
  if (hold.count < FEWEST) return false;
  const step = Math.abs(sample.force_kN - hold.force_kN);
  return step > level_kN && step > TIMES_STEP * hold.usualStep_kN;
}

/** Takes a reading as believed. Steps that were held back and turned out real teach the usual step quickly. */
export function believe(hold: JumpHold, sample: WatchSample, wasHeld: boolean): void {
  if (hold.count > 0) {
    const step = Math.abs(sample.force_kN - hold.force_kN);
    const memory = wasHeld ? HELD_MEMORY : STEP_MEMORY;
    hold.usualStep_kN += (step - hold.usualStep_kN) / Math.min(hold.count, memory);
  }
  hold.count++;
  hold.time_s = sample.time_s;
  hold.force_kN = sample.force_kN;
}

/** Whether what is held has stayed long enough, with this reading of the same kind, to be real. */
export function hasStayed(hold: JumpHold, sample: WatchSample): boolean {
  const first = hold.held[0];
  if (!first) return false;
  return sample.time_s - first.time_s > SPIKE_S || hold.held.length >= MOST_HELD;
}

/**
 * What was held stood alone: left out and counted. Where readings are over 20 ms apart a lone low reading may be a true
 * dip, and does no harm to a maximum, so only lone high ones are left out there.
 */
export function isSpike(hold: JumpHold, back: WatchSample): boolean {
  const first = hold.held[0];
  if (!first) return false;
  return first.force_kN > hold.force_kN || back.time_s - hold.time_s <= 2 * SPIKE_S;
}

export function rejectHeld(hold: JumpHold): void {
  const first = hold.held[0];
  if (!first) return;
  hold.rejected += hold.held.length;
  hold.firstRejected_s ??= first.time_s;
  hold.firstRejected_kN ??= first.force_kN;
  hold.held.length = 0;
}
