import { differenceNoise } from './noise.ts';
import { medianOf } from './order-statistic.ts';

/** The sample of the last force before the sudden loss, and the force after it. */
export interface Parting {
  readonly last: number;
  readonly after: number;
}

export interface PartingInput {
  readonly force_kN: Float64Array;
  readonly time_s: Float64Array | null;
  readonly step_s: number | null;
  readonly largest_kN: number;
}

/** Longest time a sudden loss may take. A slow machine run back takes longer. */
const SUDDEN_S = 0.2;
const SHARE_LOST = 0.5;
/** Samples before the fall that its noise is taken from; what rings after it must not count. */
const NOISE_SAMPLES = 500;
const SHARE_REGAINED = 0.8;

/** Largest force from sample i to the end, at place i - from, for i from `from` on. */
function laterMaxima(force: Float64Array, from: number): Float64Array {
  const later = new Float64Array(force.length - from + 1);
  later[force.length - from] = Number.NEGATIVE_INFINITY;
  for (let i = force.length - 1; i >= from; i--)
    later[i - from] = Math.max(force[i] as number, later[i - from + 1] as number);
  return later;
}

/** The first sample that has lost its share of the largest force before it, once that is above `least`: no sudden loss comes earlier. */
function firstLow(force: Float64Array, least: number): number {
  let highest = least;
  let bound = Number.NEGATIVE_INFINITY;
  let i = 0;
  for (; i < force.length; i++) {
    const value = force[i] as number;
    if (value > highest) {
      highest = value;
      bound = highest * (1 - SHARE_LOST);
    } else if (value < bound) break;
  }
  return i;
}

/**
 * Walks back from the fallen sample to the last one in line with those before it: within three noise widths or 0.5 % of their median. Five
 * samples before are enough for a fall that is steep against the noise; a slower fall needs more.
 */
function lastBefore(input: PartingInput, fallen: number, highest: number): number {
  const { force_kN: force, step_s } = input;
  const noise = differenceNoise(force, Math.max(0, highest - NOISE_SAMPLES), highest + 1, { step_s });
  const perSample = ((force[highest] as number) - (force[fallen] as number)) / (fallen - highest);
  const reach = Math.max(5, Math.min(fallen - highest, Math.ceil((8 * noise) / perSample)));
  for (let i = fallen - 1; i > highest; i--) {
    const level = medianOf(force.subarray(Math.max(0, i - reach), i));
    if ((force[i] as number) >= level - Math.max(3 * noise, 0.005 * level)) return i;
  }
  return highest;
}

/**
 * The parting: the earliest loss of more than half of the force within 0.2 s (two samples when sampled slowly) after which 80 % of it never
 * comes back. A loss that is regained is a slip; a fall that takes longer is necking or the machine run back. The parting force is the
 * last reading before the fall. Null when the record shows no parting. Definition: this project's, after common practice.
 */
export function findParting(input: PartingInput): Parting | null {
  const { force_kN: force, time_s: time } = input;
  const least = 0.1 * Math.max(0, input.largest_kN);
  const low = firstLow(force, least);
  const reach = Math.max(3, Math.ceil(force.length / 1000));
  const tooOld = (i: number, j: number): boolean =>
    j - i > 2 && (time ? (time[i] as number) < (time[j] as number) - SUDDEN_S : j - i > reach);
  let start = low;
  while (start > 0 && !tooOld(start, low)) start--;
  const later = laterMaxima(force, low);
  // Samples that may be the highest of the window, highest first.
  const queue = new Int32Array(force.length - start);
  let head = 0;
  let tail = 0;
  for (let j = start; j < force.length; j++) {
    const value = force[j] as number;
    while (head < tail && tooOld(queue[head] as number, j)) head++;
    if (head < tail && j >= low) {
      const highest = queue[head] as number;
      const before = force[highest] as number;
      if (before > least && value < before * (1 - SHARE_LOST) && (later[j - low] as number) < before * SHARE_REGAINED) {
        return { last: lastBefore(input, j, highest), after: j };
      }
    }
    while (tail > head && (force[queue[tail - 1] as number] as number) <= value) tail--;
    queue[tail++] = j;
  }
  return null;
}
