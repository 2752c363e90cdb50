import { seededRandom } from '../random.ts';
import { logForceAt } from './chain-law.ts';
import { shapeRoot } from './shape-root.ts';

export const bootstrapMethod =
  'parametric bootstrap: seeded resamples in which each piece keeps its links and a pull that gave "at least" its limit are fitted again, and each mode\'s pivots shape*/shape and shape* x (ln scale* - ln scale) turn the fit about (generalised pivots after Weerahandi, Exact Statistical Methods for Data Analysis, 1995; from memory); exact for one mode without censored pieces but for the count of resamples';

/** One asked-for force: ln of the cumulative hazard of one link at it. */
export interface BootstrapPlan {
  /** Links of each piece. */
  readonly links: Float64Array;
  /** ln(force / reference) at which a pull was stopped; Infinity for a piece that broke. */
  readonly limits: Float64Array;
  /** The fitted modes: shape, and ln of the hazard of one link at the reference force. */
  readonly shapes: Float64Array;
  readonly logRates: Float64Array;
  /** ln of the cumulative hazard of one link at each force that is asked for. */
  readonly targets: Float64Array;
  readonly resamples: number;
  readonly seed: number;
}

export interface BootstrapOutcome {
  /** For each target, sorted: where ln(force / reference) may truly lie. */
  readonly logForces: readonly Float64Array[];
  /** For each target: ln(force / reference) estimated from the data. */
  readonly estimates: readonly number[];
  /** Resamples in which every mode broke at least once; the others cannot be fitted and are left out. */
  readonly used: number;
}

/** An endless shape is fitted where a resample's breaks lie at its greatest force; this stands for it. */
const STEEPEST = 1e4;

/** Draws `resamples` campaigns from the fitted laws, fits each mode of each again, and turns the pivots into laws that may be the true ones. */
export function bootstrapForces(plan: BootstrapPlan): BootstrapOutcome {
  const { targets, resamples, shapes, logRates } = plan;
  const logForces = Array.from(targets, () => new Float64Array(resamples));
  const resample = resampler(plan);
  let used = 0;
  for (let k = 0; k < resamples; k++) {
    const law = resample();
    if (!law) continue;
    for (let j = 0; j < targets.length; j++) {
      const column = logForces[j];
      if (column) column[used] = logForceAt(law.shapes, law.logRates, targets[j] ?? 0);
    }
    used++;
  }
  return {
    logForces: logForces.map((column) => column.subarray(0, used).sort()),
    estimates: Array.from(targets, (target) => logForceAt(shapes, logRates, target)),
    used,
  };
}

/** ln(force / reference) that the true value exceeds with `confidence`; null without a usable resample. */
export function bootstrapLowerBound(outcome: BootstrapOutcome, target: number, confidence: number): number | null {
  const logForces = outcome.logForces[target];
  return logForces && logForces.length > 0 ? sortedQuantile(logForces, 1 - confidence) : null;
}

/** Quantile of sorted values by linear interpolation between (k - 1/2)/n. */
export function sortedQuantile(sorted: Float64Array, probability: number): number {
  const place = Math.min(Math.max(probability * sorted.length - 0.5, 0), sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? low;
  return low + (place - below) * (high - low);
}

interface Refit {
  readonly shapes: Float64Array;
  readonly logRates: Float64Array;
}

/** A function that makes one resample and fits it, null where a mode did not break; its working arrays are made once. */
function resampler(plan: BootstrapPlan): () => Refit | null {
  const { links, limits, shapes, logRates } = plan;
  const random = seededRandom(plan.seed);
  const modes = shapes.length;
  const pieces = links.length;
  const logForce = new Float64Array(pieces);
  const brokeIn = new Int32Array(pieces);
  return () => {
    for (let i = 0; i < pieces; i++) {
      let least = limits[i] ?? Number.POSITIVE_INFINITY;
      let mode = -1;
      for (let m = 0; m < modes; m++) {
        const hazard = -Math.log(1 - random.uniform()) / (links[i] ?? 1);
        const x = (Math.log(hazard) - (logRates[m] ?? 0)) / (shapes[m] ?? 1);
        if (x < least) {
          least = x;
          mode = m;
        }
      }
      logForce[i] = least;
      brokeIn[i] = mode;
    }
    return refitModes({ logForce, links, brokeIn, shapes, logRates });
  };
}

interface Resample {
  readonly logForce: Float64Array;
  readonly links: Float64Array;
  readonly brokeIn: Int32Array;
  readonly shapes: Float64Array;
  readonly logRates: Float64Array;
}

/**
 * Each mode of the resample, fitted from the shape it was drawn with, and turned about: with b, s the fit of the data and b*, s* that of the
 * resample, b* / b and b* (ln s* - ln s) are taken to be distributed as b / true b and b (ln s - ln true s).
 */
function refitModes({ logForce, links, brokeIn, shapes, logRates }: Resample): Refit | null {
  const count = logForce.length;
  const turnedShapes = new Float64Array(shapes.length);
  const turnedRates = new Float64Array(shapes.length);
  for (let m = 0; m < shapes.length; m++) {
    const { breakCount, meanLogBreak } = breaksIn(m, logForce, brokeIn);
    if (breakCount === 0) return null;
    const data = { logForce, links, count, breakCount, meanLogBreak };
    const fitted = shapes[m] ?? 1;
    const again = Math.min(shapeRoot([data], fitted).shape, STEEPEST);
    const logScale = -(logRates[m] ?? 0) / fitted;
    const logScaleAgain = (exposure(data, again) - Math.log(breakCount)) / again;
    const shape = (fitted * fitted) / again;
    turnedShapes[m] = shape;
    turnedRates[m] = -shape * (logScale - (again / fitted) * (logScaleAgain - logScale));
  }
  return { shapes: turnedShapes, logRates: turnedRates };
}

function breaksIn(mode: number, logForce: Float64Array, brokeIn: Int32Array) {
  let breakCount = 0;
  let sum = 0;
  for (let i = 0; i < logForce.length; i++) {
    if (brokeIn[i] !== mode) continue;
    breakCount++;
    sum += logForce[i] ?? 0;
  }
  return { breakCount, meanLogBreak: breakCount > 0 ? sum / breakCount : 0 };
}

/** ln of the summed exposure, counted from the greatest force of the resample. */
function exposure(data: { logForce: Float64Array; links: Float64Array; count: number }, shape: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < data.count; i++) top = Math.max(top, data.logForce[i] ?? 0);
  let sum = 0;
  for (let i = 0; i < data.count; i++) {
    sum += (data.links[i] ?? 0) * Math.exp(shape * ((data.logForce[i] ?? 0) - top));
  }
  return Math.log(sum) + shape * top;
}
