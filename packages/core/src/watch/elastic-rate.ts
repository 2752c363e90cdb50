import type { WatchMemory } from './memory.ts';

const FEWEST = 4;
/** Standard error of a slope, as a share of it, that is still believed. */
const WORST_ERROR = 0.04;
/** The same where a slow source leaves a few points of the elastic part: good enough to see that it is over. */
const ROUGH_ERROR = 0.25;
/** Growth of the slope that shows that take-up is not over. */
const GROWS = 1.12;

/**
 * Steepest slope so far of force on travel between half of the force and the force now: soft take-up is left behind as the force grows,
 * and in the linear part the slope no longer changes. Only slopes known within 4 % (standard error) count, since a maximum over noisy slopes is biased upward.
 */
export function updateElasticRate(memory: WatchMemory): void {
  const { curve, zero_kN } = memory;
  const last = curve.length - 1;
  if (last < FEWEST - 1) return;
  const f0 = curve.force_kN[last] as number;
  const x0 = curve.travel[last] as number;
  const least = zero_kN + (f0 - zero_kN) / 2;
  let n = 0;
  let x = 0;
  let f = 0;
  let xx = 0;
  let xf = 0;
  let ff = 0;
  for (let i = last; i >= 0; i--) {
    const df = (curve.force_kN[i] as number) - f0;
    if (df + f0 < least) break;
    const dx = (curve.travel[i] as number) - x0;
    n++;
    x += dx;
    f += df;
    xx += dx * dx;
    xf += dx * df;
    ff += df * df;
  }
  if (n < FEWEST) return;
  const vx = xx - (x * x) / n;
  const vf = ff - (f * f) / n;
  const slope = (xf - (x * f) / n) / vx;
  if (!(vx > 0 && slope > 0)) return;
  const left = Math.max(0, vf - slope * slope * vx);
  const error = Math.sqrt(left / (n - 2) / vx);
  if (error < ROUGH_ERROR * slope) memory.roughRate = Math.max(memory.roughRate, slope);
  if (error > WORST_ERROR * slope) return;
  if (memory.elasticRate !== null && slope <= memory.elasticRate) return;
  memory.elasticRate = slope;
  if (slope < GROWS * memory.grownRate) return;
  memory.grownRate = slope;
  memory.grownForce_kN = f0;
}
