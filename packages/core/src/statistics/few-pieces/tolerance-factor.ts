import {
  chiSquaredCdf,
  chiSquaredUpper,
  noncentralTQuantile,
  normalCdf,
  normalDensity,
  normalQuantile,
  normalUpper,
} from '../distribution/index.ts';
import { invertTail } from '../distribution/inversion.ts';
import { requireShare } from './sample.ts';

/** What a tolerance factor is asked for. */
export interface ToleranceDemand {
  /** Number of values, whole, at least 2 (1 where the standard deviation is known). */
  readonly n: number;
  /** Share of the product to lie beyond the bound (or within the limits), in (0, 1). */
  readonly coverage: number;
  /** Share of samples whose bound is right, in (0, 1). */
  readonly confidence: number;
}

function requireDemand({ n, coverage, confidence }: ToleranceDemand, least: number): void {
  if (!Number.isInteger(n) || n < least)
    throw new RangeError(`a tolerance factor takes a whole n of ${least} or more, not ${n}`);
  requireShare('the coverage', coverage);
  requireShare('the confidence', confidence);
}

/** k such that mean - k sd is a one-sided bound, exact: the `confidence` quantile of noncentral t over the root of n (ISO 16269-6). */
export function oneSidedToleranceFactor(demand: ToleranceDemand): number {
  requireDemand(demand, 2);
  const { n, coverage, confidence } = demand;
  const root = Math.sqrt(n);
  return noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * root) / root;
}

/** k such that mean - k sigma is a one-sided bound where sigma is known (ISO 16269-6). */
export function knownDeviationToleranceFactor(demand: ToleranceDemand): number {
  requireDemand(demand, 1);
  return normalQuantile(demand.coverage) + normalQuantile(demand.confidence) / Math.sqrt(demand.n);
}

/**
 * k such that mean - k sd and mean + k sd hold the share `coverage` between them, exact (ISO 16269-6):
 * the confidence is the mean, over the distance of the sample mean from the true one, of the probability that k sd reaches far enough.
 */
export function twoSidedToleranceFactor(demand: ToleranceDemand): number {
  requireDemand(demand, 2);
  const { n, coverage, confidence } = demand;
  const nodes = offsetNodes(n, coverage);
  const tail = confidence > 0.5 ? chiSquaredCdf : chiSquaredUpper;
  const logTail = (logK: number) => {
    const squareK = Math.exp(2 * logK);
    let sum = 0;
    for (const { weight, squareReach } of nodes) sum += weight * tail(((n - 1) * squareReach) / squareK, n - 1);
    return Math.log(Math.min(1, sum));
  };
  const logTarget = Math.log(Math.min(confidence, 1 - confidence));
  const guess = Math.log(normalQuantile(0.5 + coverage / 2));
  return Math.exp(invertTail({ logTail, logTarget, rising: confidence <= 0.5, guess, step: 0.1, tolerance: 1e-13 }));
}

interface OffsetNode {
  readonly weight: number;
  /** Square of the half width, in sigma, that holds the coverage about a mean off by this much. */
  readonly squareReach: number;
}

/** Trapezoidal rule over the error of the mean in units of its own standard deviation; both signs count alike. */
function offsetNodes(n: number, coverage: number): readonly OffsetNode[] {
  const step = 0.2;
  return Array.from({ length: 44 }, (_, index) => {
    const offset = index * step;
    const weight = (index === 0 ? 1 : 2) * step * normalDensity(offset);
    return { weight, squareReach: reachFor(offset / Math.sqrt(n), coverage) ** 2 };
  });
}

/** The half width about `centre` that holds `coverage` of a standard normal distribution, by Newton's method on the share left out. */
function reachFor(centre: number, coverage: number): number {
  let reach = centre + normalQuantile(0.5 + coverage / 2);
  for (let round = 0; round < 100; round += 1) {
    const outside = normalUpper(centre + reach) + normalCdf(centre - reach);
    const slope = normalDensity(centre + reach) + normalDensity(centre - reach);
    const move = (outside - (1 - coverage)) / slope;
    reach = Math.max(0.5 * reach, reach + Math.max(-0.5, Math.min(0.5, move)));
    if (Math.abs(move) < 1e-14 * reach) break;
  }
  return reach;
}
