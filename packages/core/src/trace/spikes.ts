import { neighbourSteps } from './neighbour-steps.ts';
import type { NoiseMap } from './noise.ts';
import { noiseAt } from './noise.ts';
import { medianOf, rearrangedQuantile } from './order-statistic.ts';

/** The record with its spikes bridged, and which samples they were. */
export interface SpikeFinding {
  readonly force_kN: Float64Array;
  readonly rejected: readonly number[];
}

interface SpikeContext {
  readonly force: Float64Array;
  readonly noise: NoiseMap;
  readonly floor: number;
  readonly longest: number;
  /** How many samples a reading is held before the next: more than one when the logger is faster than the sensor. */
  readonly hold: number;
  /** The steepest a force rises from sample to sample: what a fall must climb back faster than to be electrical. */
  readonly steepest: number;
}

/** Longest burst that is still electrical: 20 ms, at least 2 samples. */
function longestBurst(rate_Hz: number | null): number {
  return Math.max(2, Math.min(200, Math.round(0.02 * (rate_Hz ?? 100))));
}

/** Median of the steps that end at samples [from, to], repeats of a reading apart; null when there are none. */
function usualStep(force: Float64Array, from: number, to: number): number | null {
  const steps: number[] = [];
  for (let i = Math.max(1, from); i <= to && i < force.length; i++) {
    const step = Math.abs((force[i] as number) - (force[i - 1] as number));
    if (step > 0) steps.push(step);
  }
  return steps.length === 0 ? null : medianOf(Float64Array.from(steps));
}

/** Usual step beside a burst [from, to]: before or after it, whichever is smaller, since a sudden loss may follow. */
function stepBeside(context: SpikeContext, from: number, to: number): number {
  const { force, hold } = context;
  const before = usualStep(force, from - 5 * hold, from - 1);
  const after = usualStep(force, to + 2, to + 1 + 5 * hold);
  return Math.min(before ?? after ?? 0, after ?? before ?? 0);
}

function threshold(context: SpikeContext, from: number, to: number): number {
  return 8 * noiseAt(context.noise, from) + 6 * stepBeside(context, from, to) + context.floor;
}

/** End of an upward burst that starts at i: the last sample before the force is back at its level. -1 when it does not come back. */
function upwardEnd(context: SpikeContext, i: number): number {
  const { force, longest } = context;
  const level = force[i - 1] as number;
  for (let end = i; end < i + longest && end < force.length; end++) {
    const limit = threshold(context, i, end);
    if ((force[end] as number) - level <= limit) return -1;
    if (end === force.length - 1) return end === i ? end : -1;
    if ((force[end + 1] as number) - level <= limit) return end;
  }
  return -1;
}

/** Start of a downward burst that ends before i, where the force jumps back to its level. -1 when it was no burst. */
function downwardStart(context: SpikeContext, i: number): number {
  const { force, longest } = context;
  const level = force[i] as number;
  for (let start = i - 1; start > i - 1 - longest && start > 0; start--) {
    const limit = Math.max(threshold(context, start, i - 1), 3 * context.steepest);
    if (level - (force[start] as number) <= limit) return -1;
    if (Math.abs(level - (force[start - 1] as number)) <= limit) return start;
  }
  return -1;
}

/** Samples per change of the reading, 1 to 200. */
function usualHold(force: Float64Array): number {
  let changes = 0;
  for (let i = 1; i < force.length; i++) if (force[i] !== force[i - 1]) changes++;
  return Math.max(1, Math.min(200, Math.round(force.length / Math.max(1, changes))));
}

/** The step up that only three in a hundred pass. */
function steepestStep(force: Float64Array): number {
  const steps = neighbourSteps(force);
  return steps.length === 0 ? 0 : Math.max(0, rearrangedQuantile(steps, 0.97));
}

function spikeContext(force: Float64Array, noise: NoiseMap, floor: number, rate_Hz: number | null): SpikeContext {
  return {
    force,
    noise,
    floor,
    longest: longestBurst(rate_Hz),
    hold: usualHold(force),
    steepest: steepestStep(force),
  };
}

/** The burst that jumps up at i, or jumps back up at i from a fall; null when there is none. */
function burstAt(context: SpikeContext, i: number): { readonly from: number; readonly to: number } | null {
  const end = upwardEnd(context, i);
  if (end >= 0) return { from: i, to: end };
  const start = downwardStart(context, i);
  return start < 0 ? null : { from: start, to: i - 1 };
}

/** The first sample from `from` on that lies more than `least` above the one before; the number of samples when there is none. */
function nextJump(force: Float64Array, from: number, least: number): number {
  let i = from;
  while (i < force.length && (force[i] as number) - (force[i - 1] as number) <= least) i++;
  return i;
}

function bridge(force: Float64Array, from: number, to: number): void {
  const before = force[from - 1] as number;
  const after = to + 1 < force.length ? (force[to + 1] as number) : before;
  // Towards a sudden loss there is nothing to lead to: the bridge stays level.
  const target = after < before / 2 ? before : after;
  const span = to - from + 2;
  for (let i = from; i <= to; i++) force[i] = before + ((target - before) * (i - from + 1)) / span;
}

/**
 * Rejects electrical spikes one by one: bursts of at most 20 ms (2 samples when sampled slowly) that jump up, or back up, by more than eight times the
 * noise and six times the steps beside them, and then return to the level before. A piece loads no faster than its stiffness times the table
 * speed, so no such jump is a force; a fall that climbs back no faster than three times the steepest usual step (a seating dip) is left alone. Rejected samples are bridged by a line.
 * Common practice; the bound of eight standard deviations leaves 1.2 million samples of white noise untouched.
 */
export function rejectSpikes(
  force: Float64Array,
  noise: NoiseMap,
  resolution_kN: number | null,
  rate_Hz: number | null,
): SpikeFinding {
  const rejected: number[] = [];
  let context: SpikeContext | null = null;
  let clean = force;
  const floor = 3 * (resolution_kN ?? 0);
  // The noise near a sample is never under half of the whole record's: most samples need no closer look.
  const least = Math.max(floor, 4 * noise.overall);
  for (let i = nextJump(clean, 1, least); i < clean.length; i = nextJump(clean, i + 1, least)) {
    const jump = (clean[i] as number) - (clean[i - 1] as number);
    if (jump <= 8 * noiseAt(noise, i)) continue;
    const before = Math.abs((clean[i - 1] as number) - (i > 1 ? (clean[i - 2] as number) : (clean[i - 1] as number)));
    const after = i + 1 < clean.length ? Math.abs((clean[i + 1] as number) - (clean[i] as number)) : 0;
    if (jump <= 3 * before && jump <= 3 * after) continue;
    context ??= spikeContext(force, noise, floor, rate_Hz);
    const burst = burstAt(context, i);
    if (!burst) continue;
    if (clean === force) {
      clean = force.slice();
      context = { ...context, force: clean };
    }
    for (let k = burst.from; k <= burst.to; k++) rejected.push(k);
    bridge(clean, burst.from, burst.to);
  }
  return { force_kN: clean, rejected };
}

/** The rejected samples of the pull itself: after parting the beam rings and nothing is pulled, so what jumps there is no spike. */
export function spikesOfPull(
  rejected: readonly number[],
  parting: { readonly after: number } | null,
): readonly number[] {
  return parting === null ? rejected : rejected.filter((i) => i < parting.after);
}
