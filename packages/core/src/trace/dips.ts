import { placeOfLargest } from './largest.ts';
import { meanBetween } from './mean.ts';
import type { TraceEvent } from './reading.ts';

export interface DipInput {
  readonly force_kN: Float64Array;
  readonly time_s: Float64Array;
  readonly from: number;
  readonly to: number;
  readonly noise_kN: number;
  readonly resolution_kN: number | null;
  readonly maximum_kN: number;
  readonly step_s: number;
}

const SMOOTH_S = 0.05;
const LEAST_SHARE = 0.002;
/** A fall of more than this share of the force is a slip, a smaller one a dip. */
const SLIP_SHARE = 0.2;

/** Block size that brings the threshold to half a per cent of the maximum, within 50 ms. */
function blockSize(input: DipInput): number {
  const wanted = Math.ceil(((8 * input.noise_kN) / (0.005 * input.maximum_kN)) ** 2);
  return Math.max(1, Math.min(wanted, Math.floor(SMOOTH_S / input.step_s)));
}

/** A re-rise of less than this share of the fall is a ripple on a decline. */
const LEAST_RISE = 0.2;

interface Turn {
  readonly peakAt: number;
  readonly peak: number;
  readonly drop: number;
  /** Place from which the force rises again. */
  readonly resumed: number;
}

/** A peak (the last sample of the largest force) and the first sample after it that lies more than the threshold lower. */
interface Fall {
  readonly peakAt: number;
  readonly peak: number;
  readonly at: number;
}

/** The next fall from sample `from` on; `at` is the number of samples when there is none. */
function nextFall(force: Float64Array, from: number, threshold: number): Fall {
  let peakAt = from;
  let peak = force[from] as number;
  let i = from;
  for (; i < force.length; i++) {
    const value = force[i] as number;
    if (value >= peak) {
      peak = value;
      peakAt = i;
    } else if (peak - value > threshold) break;
  }
  return { peakAt, peak, at: i };
}

/** The lowest force after a fall and the first sample that has risen from it enough; `at` is the number of samples when none has. */
function nextRise(force: Float64Array, fall: Fall, threshold: number): { readonly low: number; readonly at: number } {
  const { peak } = fall;
  let low = force[fall.at] as number;
  let i = fall.at + 1;
  for (; i < force.length; i++) {
    const value = force[i] as number;
    if (value < low) low = value;
    else if (value - low > Math.max(threshold, LEAST_RISE * (peak - low))) break;
  }
  return { low, at: i };
}

/** Local maxima followed by a fall and a re-rise, both over the threshold. */
function turns(force: Float64Array, threshold: number): Turn[] {
  const found: Turn[] = [];
  for (let from = 0; from < force.length; ) {
    const fall = nextFall(force, from, threshold);
    if (fall.at === force.length) break;
    const rise = nextRise(force, fall, threshold);
    if (rise.at === force.length) break;
    found.push({ peakAt: fall.peakAt, peak: fall.peak, drop: fall.peak - rise.low, resumed: rise.at });
    from = rise.at;
  }
  return found;
}

/** For each turn, whether the force later passes its peak: one walk from the end. */
function regains(force: Float64Array, found: readonly Turn[]): boolean[] {
  let later = Number.NEGATIVE_INFINITY;
  let last = force.length - 1;
  const fromLast = [...found].reverse().map(({ resumed, peak }) => {
    later = Math.max(later, force[placeOfLargest(force, resumed, last)] as number);
    last = resumed - 1;
    return later > peak;
  });
  return fromLast.reverse();
}

function blocks(input: DipInput, block: number): Float64Array {
  const means = new Float64Array(Math.floor((input.to - input.from + 1) / block));
  for (let k = 0; k < means.length; k++) {
    const start = input.from + k * block;
    means[k] = meanBetween(input.force_kN, start, start + block);
  }
  return means;
}

/**
 * Every local maximum with a fall and a re-rise beyond noise: over eight standard deviations of the noise (means over up to 50 ms when noisy), four
 * steps of resolution and 0.2 % of the maximum; the re-rise is a fifth of the fall or more. A fall of more than a fifth of the force is a slip, else a dip. `regained` says whether the
 * force later passed its value before the fall. Peak-and-valley counting with a dead band: ASTM E1049, rainflow, the hysteresis filter.
 */
export function findDips(input: DipInput): TraceEvent[] {
  const block = blockSize(input);
  const force = block === 1 ? input.force_kN.subarray(input.from, input.to + 1) : blocks(input, block);
  const noise = input.noise_kN / Math.sqrt(block);
  const threshold = Math.max(8 * noise, 4 * (input.resolution_kN ?? 0), LEAST_SHARE * input.maximum_kN);
  const found = turns(force, threshold);
  const regained = regains(force, found);
  return found.map(({ peakAt, peak, drop }, k) => ({
    kind: drop > SLIP_SHARE * peak ? 'slip' : 'dip',
    time_s: input.time_s[input.from + peakAt * block + (block >> 1)] as number,
    force_kN: peak,
    drop_kN: drop,
    regained: regained[k] ?? false,
  }));
}
