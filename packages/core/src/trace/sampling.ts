import { neighbourSteps } from './neighbour-steps.ts';
import { rearrangedQuantile } from './order-statistic.ts';

/** How the record was sampled. */
export interface Sampling {
  /** Typical step between samples; null without a time. */
  readonly step_s: number | null;
  readonly rate_Hz: number | null;
  readonly duration_s: number | null;
  /** Samples before which the time jumps by more than five steps. */
  readonly gaps: readonly number[];
  /** Samples with the time of the sample before. */
  readonly repeats: readonly number[];
  /** True when the time is written too coarsely to tell samples apart. */
  readonly coarseTime: boolean;
}

const MOST_LISTED = 1000;

/** The first sample from `from` on whose step from the one before is zero or over `limit`; the number of samples when there is none. */
function nextUneven(time: Float64Array, from: number, limit: number): number {
  let i = from;
  for (; i < time.length; i++) {
    const step = (time[i] as number) - (time[i - 1] as number);
    if (!(step > 0 && step <= limit)) break;
  }
  return i;
}

function countZeros(values: Float64Array): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) if (values[i] === 0) count++;
  return count;
}

/**
 * Typical step (median), rate, gaps (a step over five times the typical) and repeated times. When a fifth of the steps is zero the
 * time is only written coarsely: the step is then duration / (samples - 1) and no repeats are listed.
 */
export function readSampling(time: Float64Array | null): Sampling {
  if (!time || time.length < 2)
    return { step_s: null, rate_Hz: null, duration_s: null, gaps: [], repeats: [], coarseTime: false };
  const duration_s = (time[time.length - 1] as number) - (time[0] as number);
  const each = neighbourSteps(time);
  const coarseTime = countZeros(each) > Math.floor(0.2 * each.length);
  const step_s = coarseTime ? duration_s / (time.length - 1) : rearrangedQuantile(each, 0.5);
  const limit = Math.max(5 * step_s, coarseTime ? 5 * rearrangedQuantile(each, 0.995) : 0);
  const gaps: number[] = [];
  const repeats: number[] = [];
  for (let i = nextUneven(time, 1, limit); i < time.length; i = nextUneven(time, i + 1, limit)) {
    const step = (time[i] as number) - (time[i - 1] as number);
    if (step > limit && gaps.length < MOST_LISTED) gaps.push(i);
    else if (step === 0 && !coarseTime && repeats.length < MOST_LISTED) repeats.push(i);
  }
  return { step_s, rate_Hz: step_s > 0 ? 1 / step_s : null, duration_s, gaps, repeats, coarseTime };
}
