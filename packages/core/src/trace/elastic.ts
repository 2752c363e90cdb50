import type { Coarse } from './coarse.ts';
import type { LineFit, LineSums } from './line-fit.ts';
import { fitLine, lineSums } from './line-fit.ts';
import type { Interval } from './reading.ts';
import { studentFactor95 } from './student-factor.ts';

/** The elastic part of a pull. */
export interface Elastic {
  readonly stiffness_kN_per_mm: number;
  readonly interval95_kN_per_mm: Interval;
  /** Toe-corrected origin: travel at which the elastic line meets zero force. */
  readonly origin_mm: number;
  /** Best stretch, as places in the coarse record [from, to). */
  readonly from: number;
  readonly to: number;
}

interface Window {
  readonly fit: LineFit;
  readonly from: number;
  readonly to: number;
  /** Standard error of the slope, joined with its bend, over the slope. */
  readonly error: number;
}

const LOWEST = 0.05;
const HIGHEST = 0.85;
const STEP = 0.025;
const LEAST_SPAN = 0.2;
/** Fits closer than this are all taken as equally good. */
const ERROR_FLOOR = 0.001;

/** Place of the first point that reaches each share of the maximum force. */
function firstPlaces(force: Float64Array, maximum: number): number[] {
  const places: number[] = [];
  let at = 0;
  for (let share = LOWEST; share <= HIGHEST + 1e-9; share += STEP) {
    while (at < force.length && (force[at] as number) < share * maximum) at++;
    places.push(at);
  }
  return places;
}

/** How far the slopes of the two halves of a window are from their mean, halved: about one standard error for a straight noisy stretch. */
function bend(sums: LineSums, from: number, to: number): number {
  const middle = (from + to) >> 1;
  const lower = fitLine(sums, from, middle);
  const upper = fitLine(sums, middle, to);
  return lower && upper ? Math.abs(lower.slope - upper.slope) / 4 : 0;
}

function windows(sums: LineSums, places: readonly number[], leastPoints: number): Window[] {
  const found: Window[] = [];
  const span = Math.round(LEAST_SPAN / STEP);
  for (let low = 0; low < places.length; low++) {
    for (let high = low + span; high < places.length; high++) {
      const from = places[low] as number;
      const to = (places[high] as number) + 1;
      if (to - from < leastPoints) continue;
      const fit = fitLine(sums, from, Math.min(to, sums.x.length - 1));
      if (!fit || fit.slope <= 0) continue;
      const error = Math.hypot(fit.slopeError, bend(sums, from, from + fit.count)) / fit.slope;
      found.push({ fit, from, to, error: Math.max(ERROR_FLOOR, error) });
    }
  }
  return found;
}

/** Weight of a window: the inverse square of its relative error; none for slopes under three quarters of the steepest sound one. */
function weigh(all: readonly Window[]): { readonly window: Window; readonly weight: number }[] {
  const best = Math.min(...all.map((window) => window.error));
  const sound = all.filter((window) => window.error <= Math.max(0.03, 2 * best));
  const steepest = Math.max(...sound.map((window) => window.fit.slope));
  const kept = sound.filter((window) => window.fit.slope >= 0.75 * steepest);
  return kept.map((window) => ({ window, weight: (best / window.error) ** 2 * (window.fit.slope / steepest) ** 4 }));
}

/** Lag-one correlation of the residuals, between 0 and 0.95: what it takes from the number of independent points. */
function correlation(coarse: Coarse, window: Window): number {
  const { fit } = window;
  const residual = (i: number): number =>
    (coarse.force_kN[i] as number) - fit.meanY - fit.slope * ((coarse.travel_mm[i] as number) - fit.meanX);
  let product = 0;
  let square = 0;
  for (let i = window.from + 1; i < window.from + fit.count; i++) {
    product += residual(i) * residual(i - 1);
    square += residual(i) ** 2;
  }
  return square > 0 ? Math.min(0.95, Math.max(0, product / square)) : 0;
}

/**
 * Elastic stiffness: least-squares lines are laid through every stretch of the rising record that spans at least 20 % of the maximum force
 * between 5 % and 85 % of it; the stiffness is the mean of their slopes, weighted by the inverse square of the relative error (standard error and bend between the halves), and
 * stretches less than three quarters as steep as the steepest sound one (take-up, plastic flow) do not count. The 95 % interval joins
 * the error of the best line (Student's t, points thinned by the correlation of the residuals) and the spread between the stretches.
 * After the least-normalised-residual search of ASTM E3076 (memory) with the averaging of Buckland et al., Biometrics 53 (1997) 603.
 * Null when no stretch holds four points or the force does not rise with the travel.
 */
export function findElastic(coarse: Coarse, maximum: number): Elastic | null {
  const sums = lineSums(coarse.travel_mm, coarse.force_kN);
  const places = firstPlaces(coarse.force_kN, maximum);
  const many = windows(sums, places, 8);
  const all = many.length > 0 ? many : windows(sums, places, 4);
  if (all.length === 0) return null;
  const weighed = weigh(all);
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0);
  const average = (of: (window: Window) => number): number =>
    weighed.reduce((sum, { window, weight }) => sum + weight * of(window), 0) / total;
  const stiffness = average((window) => window.fit.slope);
  const spread = Math.sqrt(average((window) => (window.fit.slope - stiffness) ** 2));
  const best = weighed.reduce((a, b) => (b.weight > a.weight ? b : a)).window;
  const independent = (1 - correlation(coarse, best)) / (1 + correlation(coarse, best));
  const freedom = Math.max(2, best.fit.count * independent - 2);
  const error = best.fit.slopeError / Math.sqrt(independent);
  const half = Math.hypot(studentFactor95(freedom) * error, 1.96 * spread);
  return {
    stiffness_kN_per_mm: stiffness,
    interval95_kN_per_mm: { lower: stiffness - half, upper: stiffness + half },
    origin_mm: average((window) => window.fit.meanX - window.fit.meanY / window.fit.slope),
    from: best.from,
    to: best.from + best.fit.count,
  };
}
