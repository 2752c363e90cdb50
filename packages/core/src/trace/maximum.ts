import { differenceNoise } from './noise.ts';
import { parabolaTop } from './parabola-fit.ts';

/** The maximum force and what bounds it. */
export interface Maximum {
  readonly force_kN: number;
  /** Sample nearest to the maximum. */
  readonly sample: number;
  readonly noise_kN: number;
  /** Standard uncertainty from noise, or from the fit when one was made. */
  readonly noiseUncertainty_kN: number;
  /** Standard uncertainty from looking only every so often: half of the last step up. */
  readonly samplingUncertainty_kN: number;
  readonly smoothed: boolean;
}

export interface MaximumInput {
  readonly force_kN: Float64Array;
  readonly from: number;
  readonly to: number;
  /** First sample of the largest force on [from, to]. */
  readonly top: number;
  readonly step_s: number | null;
}

/** Above this share of the maximum, the upward bias of the largest noisy reading is worth a fit. */
const BIAS_WORTH_FITTING = 0.002;
/** With fewer loaded samples, curvature cannot be told from noise. */
const FEWEST_TO_FIT = 100;

/** Expected excess of the largest of n noisy readings over their common level: sigma sqrt(2 ln n), an upper bound (Cramer 1946, 28.6). */
function expectedBias(noise: number, count: number): number {
  return noise * Math.sqrt(2 * Math.log(Math.max(2, count)));
}

function countNear(force: Float64Array, from: number, to: number, level: number): number {
  let count = 0;
  for (let i = from; i <= to; i++) if ((force[i] as number) >= level) count++;
  return count;
}

/** Centre of the window of `size` samples with the greatest mean, inside [from, to]. */
function highestWindow(force: Float64Array, from: number, to: number, size: number): number {
  let sum = 0;
  for (let i = from; i < from + size; i++) sum += force[i] as number;
  let best = sum;
  let at = from;
  for (let i = from + 1; i + size - 1 <= to; i++) {
    sum += (force[i + size - 1] as number) - (force[i - 1] as number);
    if (sum > best) {
      best = sum;
      at = i;
    }
  }
  return at + (size >> 1);
}

interface FittedTop {
  readonly value: number;
  readonly at: number;
  readonly uncertainty: number;
}

/** Chi-square per degree of freedom (of five) that a good fit passes in one case of forty. */
const WORST_MISFIT = 2.6;
/** What the shape of the curve may add beyond a parabola that fits within the noise, as a share of the noise. */
const SHAPE_SHARE = 0.1;
/** The place and the width of the window are chosen by the same readings that are fitted. */
const CHOICE_FACTOR = 1.25;

/**
 * Parabolas over wider and wider windows about the highest stretch; the widest that fits within the noise is taken, and two misfits in a row end the search.
 * A narrow window is the more in doubt, since its place was chosen for being high.
 */
function fittedTop(force: Float64Array, from: number, to: number, noise: number): FittedTop | null {
  const size = Math.min(Math.max(5, Math.round((to - from) / 300)), to - from + 1);
  const centre = highestWindow(force, from, to, size);
  let taken: FittedTop | null = null;
  let misfits = 0;
  for (let half = Math.max(3, size >> 1); half <= (to - from) / 2 && misfits < 2; half = Math.ceil(half * 1.4)) {
    const top = parabolaTop(force, Math.max(from, centre - half), Math.min(to, centre + half), noise);
    if (!top) continue;
    misfits = top.misfit > WORST_MISFIT ? misfits + 1 : 0;
    if (misfits > 0 && taken) continue;
    const shift: number = taken && half > 2 * size ? Math.abs(top.value - taken.value) / 2 : 0;
    taken = {
      value: top.value,
      at: Math.round(top.at),
      uncertainty: Math.hypot(CHOICE_FACTOR * top.error, shift, SHAPE_SHARE * noise),
    };
  }
  return taken;
}

/** The larger of the last two steps up to a sample; readings that only repeat the one before are no steps. */
function lastStepUp(force: Float64Array, at: number): number {
  let larger = 0;
  let found = 0;
  for (let i = at; i > 0 && i > at - 1000 && found < 2; i--) {
    const step = (force[i] as number) - (force[i - 1] as number);
    if (step === 0) continue;
    larger = Math.max(larger, step);
    found++;
  }
  return larger;
}

/**
 * Maximum force on samples [from, to], spikes already rejected. Clean records: the largest reading. The largest of many noisy readings lies above the
 * truth; where that excess could pass 0.2 % of the force, the top of a parabola fitted about the highest stretch is taken instead, over the
 * widest window that it fits within the noise. The uncertainty holds noise (rectangular over the expected excess, or the error of the fit)
 * and the rise that may have been missed between two samples (half of the last step up).
 */
export function findMaximum({ force_kN: force, from, to, top: raw, step_s }: MaximumInput): Maximum {
  const reach = Math.max(30, Math.round((to - from) / 50));
  const noise = differenceNoise(force, Math.max(from, raw - reach), Math.min(to + 1, raw + reach), { step_s });
  const value = force[raw] as number;
  const bias = expectedBias(noise, countNear(force, from, to, value - 3 * noise));
  const worthFitting = bias > BIAS_WORTH_FITTING * value && to - from >= FEWEST_TO_FIT;
  const top = worthFitting ? fittedTop(force, from, to, noise) : null;
  if (top) {
    return {
      force_kN: top.value,
      sample: top.at,
      noise_kN: noise,
      noiseUncertainty_kN: top.uncertainty,
      samplingUncertainty_kN: 0,
      smoothed: true,
    };
  }
  return {
    force_kN: value,
    sample: raw,
    noise_kN: noise,
    noiseUncertainty_kN: bias / Math.sqrt(3),
    samplingUncertainty_kN: Math.max(0, lastStepUp(force, raw) - 2 * noise) / 2,
    smoothed: false,
  };
}
