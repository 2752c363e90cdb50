import { normalQuantile } from '../distribution/index.ts';
import { logExposure, type ModeRecord } from './mode-record.ts';
import { correctedShape } from './shape-bias.ts';
import { shapeRoot } from './shape-root.ts';

export interface Interval {
  readonly low: number;
  /** null: the data set no upper limit. */
  readonly high: number | null;
}

/** A Weibull law per link: a piece of n links bears force F with probability exp(-n (F / scale)^shape). */
export interface WeibullFit {
  readonly shape: number;
  /** The force that a single link survives with probability 1/e. */
  readonly scale_kN: number;
  readonly logLikelihood: number;
  readonly shapeStandardError: number;
  readonly scaleStandardError_kN: number;
  /** Shape with its small-sample bias taken off, where the formula has a value. */
  readonly correctedShape: number | null;
  readonly breaks: number;
  readonly pieces: number;
  readonly converged: boolean;
  readonly method: string;
}

/** A fit, or why there is none. */
export type FitOutcome =
  | { readonly fit: WeibullFit; readonly reason: null }
  | { readonly fit: null; readonly reason: string };

export const likelihoodMethod =
  'maximum likelihood of a Weibull law per link with right-censored pieces; scale eliminated, shape by bracketed Newton steps; standard errors from the observed information (Lawless, Statistical Models and Methods for Lifetime Data, chapter 5; from memory)';

/** Fits the law of one mode; a reason in words when the breaks do not determine it. */
export function fitWeibull(record: ModeRecord): FitOutcome {
  if (record.count === 0) return { fit: null, reason: 'no piece was pulled' };
  if (record.breakCount === 0) return { fit: null, reason: 'no piece broke in this mode: there is only a bound' };
  const root = shapeRoot([record], startingShape(record));
  if (!Number.isFinite(root.shape)) {
    const reason =
      record.breakCount > 1
        ? 'all breaks lie at the greatest force: no scatter, so no shape'
        : 'the one break lies at the greatest force: the likelihood sets no upper limit to the shape';
    return { fit: null, reason };
  }
  return { fit: fitAt(record, root.shape, root.converged), reason: null };
}

/** From the scatter of all forces, which need not be good: the root is bracketed anyway. */
export function startingShape(record: ModeRecord): number {
  const { logForce, count } = record;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    sum += logForce[i] ?? 0;
    squares += (logForce[i] ?? 0) ** 2;
  }
  const variance = squares / count - (sum / count) ** 2;
  return variance > 1e-12 ? 1.2 / Math.sqrt(variance) : 1000;
}

function fitAt(record: ModeRecord, shape: number, converged: boolean): WeibullFit {
  const logScale = (logExposure(record, shape) - Math.log(record.breakCount)) / shape;
  const scale_kN = Math.exp(record.logReference + logScale);
  const { shapeVariance, scaleVariance } = covariance(record, shape, logScale);
  return {
    shape,
    scale_kN,
    logLikelihood: logLikelihood(record, shape, logScale),
    shapeStandardError: Math.sqrt(shapeVariance),
    scaleStandardError_kN: scale_kN * Math.sqrt(scaleVariance),
    correctedShape: correctedShape(record, shape),
    breaks: record.breakCount,
    pieces: record.count,
    converged,
    method: likelihoodMethod,
  };
}

/** Log likelihood of `record` for a shape and ln(scale / reference), in forces of kN, the number of links of each break included. */
export function logLikelihood(record: ModeRecord, shape: number, logScale: number): number {
  const { logForce, links, breaks, count, logReference } = record;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const z = shape * ((logForce[i] ?? 0) - logScale);
    const n = links[i] ?? 0;
    const broke = breaks[i] ?? 0;
    sum -= n * Math.exp(z);
    if (broke > 0) sum += broke * (Math.log(n * shape) + z - (logForce[i] ?? 0) - logReference);
  }
  return sum;
}

/** Inverse of the observed information in (shape, ln scale); the scale's variance is relative. */
function covariance(record: ModeRecord, shape: number, logScale: number) {
  const { logForce, links, count, breakCount } = record;
  let s1 = 0;
  let s2 = 0;
  for (let i = 0; i < count; i++) {
    const distance = (logForce[i] ?? 0) - logScale;
    const exposure = (links[i] ?? 0) * Math.exp(shape * distance);
    s1 += exposure * distance;
    s2 += exposure * distance * distance;
  }
  const ofShape = breakCount / shape ** 2 + s2;
  const ofScale = breakCount * shape ** 2;
  const mixed = -shape * s1;
  const determinant = ofShape * ofScale - mixed * mixed;
  return { shapeVariance: ofScale / determinant, scaleVariance: ofShape / determinant };
}

/** Wald interval estimate +/- z x standard error, two-sided; a lower end below zero is left as it comes. */
export function waldInterval(estimate: number, standardError: number, confidence: number): Interval {
  const z = normalQuantile((1 + confidence) / 2);
  return { low: estimate - z * standardError, high: estimate + z * standardError };
}
