import { seededRandom } from '../random.ts';
import { logForceAt, logHazard } from './chain-law.ts';
import { shapeRoot } from './shape-root.ts';

export const bootstrapMethod =
  'parametric bootstrap of the pivot (ln estimate - ln true) x shape, by refitting seeded resamples in which each piece keeps its links and a pull that gave "at least" its limit; exact for one mode without censored pieces but for the count of resamples';

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
  /** For each target the sorted pivots of the resamples that had a break. */
  readonly pivots: readonly Float64Array[];
  /** ln(force / reference) estimated from the data, and the shape of all modes together there. */
  readonly estimates: readonly { readonly logForce: number; readonly shape: number }[];
  readonly used: number;
}

/** An endless shape is fitted where a resample's breaks lie at its greatest force; this stands for it. */
const STEEPEST = 1e4;

/**
 * Draws `resamples` campaigns from the fitted laws, fits each mode of each again and returns the pivots. Resamples without any break are
 * left out.
 */
export function bootstrapPivots(plan: BootstrapPlan): BootstrapOutcome {
  const { targets, resamples, shapes, logRates } = plan;
  const estimates = Array.from(targets, (target) => {
    const logForce = logForceAt(shapes, logRates, target);
    return { logForce, shape: logHazard(shapes, logRates, logForce).slope };
  });
  const pivots = estimates.map(() => new Float64Array(resamples));
  const resample = resampler(plan);
  let used = 0;
  for (let k = 0; k < resamples; k++) {
    const refit = resample();
    if (refit.shapes.length === 0) continue;
    for (let j = 0; j < estimates.length; j++) {
      const logForce = logForceAt(refit.shapes, refit.logRates, targets[j] ?? 0);
      const shape = logHazard(refit.shapes, refit.logRates, logForce).slope;
      const column = pivots[j];
      if (column) column[used] = (logForce - (estimates[j]?.logForce ?? 0)) * shape;
    }
    used++;
  }
  return { pivots: pivots.map((column) => column.subarray(0, used).sort()), estimates, used };
}

/** ln(force / reference) that the true value exceeds with `confidence`; null without a usable resample. */
export function pivotLowerBound(outcome: BootstrapOutcome, target: number, confidence: number): number | null {
  const pivots = outcome.pivots[target];
  const estimate = outcome.estimates[target];
  if (!pivots || !estimate || pivots.length === 0) return null;
  return estimate.logForce - sortedQuantile(pivots, confidence) / estimate.shape;
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

/** A function that makes one resample and fits it; its working arrays are made once. */
function resampler(plan: BootstrapPlan): () => Refit {
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
    return refitModes({ logForce, links, brokeIn, shapes });
  };
}

interface Resample {
  readonly logForce: Float64Array;
  readonly links: Float64Array;
  readonly brokeIn: Int32Array;
  readonly shapes: Float64Array;
}

/** Each mode that broke in the resample, fitted from the shape it was drawn with. */
function refitModes({ logForce, links, brokeIn, shapes }: Resample): Refit {
  const count = logForce.length;
  const newShapes: number[] = [];
  const newRates: number[] = [];
  for (let m = 0; m < shapes.length; m++) {
    let breakCount = 0;
    let sum = 0;
    for (let i = 0; i < count; i++) {
      if (brokeIn[i] !== m) continue;
      breakCount++;
      sum += logForce[i] ?? 0;
    }
    if (breakCount === 0) continue;
    const data = { logForce, links, count, breakCount, meanLogBreak: sum / breakCount };
    const shape = Math.min(shapeRoot([data], shapes[m] ?? 1).shape, STEEPEST);
    newShapes.push(shape);
    newRates.push(Math.log(breakCount) - exposure(data, shape));
  }
  return { shapes: Float64Array.from(newShapes), logRates: Float64Array.from(newRates) };
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
