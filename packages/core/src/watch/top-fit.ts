import type { Curve } from './curve.ts';

/** A parabola through the last part of the hardening curve: its slope and second derivative at the last point, per unit of travel. */
export interface TopFit {
  readonly slope: number;
  readonly curvature: number;
}

const FEWEST = 8;
/** Sums of w, wx, wx2, wx3, wx4, wy, wxy, wx2y. */
const SUMS = 8;

/**
 * Least-squares parabola of force on travel over the last `share` of the travel since `fromTravel`. A point weighs as the travel it stands for, so that
 * a standing table adds nothing; points under what was reached before (a dip, a relaxation) are left out. Any smooth curve is
 * a parabola near its maximum. Null for too few points or too little spread. At most 256 points: bounded work.
 */
export function fitTop(curve: Curve, fromTravel: number, share: number): TopFit | null {
  const last = curve.length - 1;
  const end = curve.travel[last] ?? 0;
  const span = share * (end - fromTravel);
  if (last < FEWEST || !(span > 0)) return null;
  const sums = new Float64Array(SUMS);
  const f0 = curve.force_kN[last] as number;
  let count = 0;
  let reached = Number.NEGATIVE_INFINITY;
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= last; i++) {
    const travel = curve.travel[i] as number;
    const force = curve.force_kN[i] as number;
    const step = travel - before;
    const isOn = travel >= end - span && step > 0 && force >= reached;
    before = Math.max(before, travel);
    reached = Math.max(reached, force);
    if (!isOn) continue;
    count++;
    addPoint(sums, (travel - end) / span, force - f0, Math.min(step, span));
  }
  const fit = count < FEWEST ? null : solve(sums);
  return fit && { slope: fit.b / span, curvature: (2 * fit.c) / (span * span) };
}

function addPoint(sums: Float64Array, x: number, y: number, weight: number): void {
  let power = weight;
  for (let k = 0; k < 5; k++) {
    sums[k] = (sums[k] as number) + power;
    if (k < 3) sums[5 + k] = (sums[5 + k] as number) + power * y;
    power *= x;
  }
}

/** Cramer's rule on the three normal equations of a + b x + c x2. */
function solve(sums: Float64Array): { readonly b: number; readonly c: number } | null {
  const [s0 = 0, s1 = 0, s2 = 0, s3 = 0, s4 = 0, t0 = 0, t1 = 0, t2 = 0] = sums;
  const d0 = s2 * s4 - s3 * s3;
  const d1 = s1 * s4 - s2 * s3;
  const d2 = s1 * s3 - s2 * s2;
  const det = s0 * d0 - s1 * d1 + s2 * d2;
  if (!(Math.abs(det) > 1e-12 * s0 ** 3)) return null;
  return {
    b: (s0 * (t1 * s4 - t2 * s3) - t0 * d1 + s2 * (s1 * t2 - s2 * t1)) / det,
    c: (s0 * (s2 * t2 - s3 * t1) - s1 * (s1 * t2 - t1 * s2) + t0 * d2) / det,
  };
}
