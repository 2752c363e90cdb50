import { gammaQuantile } from '../distribution/index.ts';
import { cellMiddle, latticeCells, latticePoints } from './lattice.ts';
import { logExposure, type ModeRecord } from './mode-record.ts';
import type { ShapePrior } from './shape-prior.ts';
import type { Interval } from './weibull-fit.ts';

export const posteriorMethod =
  'Bayes: log-normal prior on the shape, flat prior on ln(scale); scale integrated in closed form (a gamma law given the shape), shape by quadrature on 400 points, modes joined on a fixed lattice of 1021 points; the same numbers every time. A mode without a break: its shape from the prior alone and its rate as if a break were due now, which for a known shape is the success-run bound';

/** What is held of one mode after the pulls. Rates are ln of the cumulative hazard of one link at the reference force. */
export interface ModePosterior {
  readonly mode: string;
  readonly breaks: number;
  readonly shapeMedian: number;
  readonly shapeInterval: Interval;
  /** Standard deviation of ln(shape) after the pulls over that before them: 1 says that the breaks taught nothing of the shape. */
  readonly shapeSpreadKept: number;
  /** Median of the per-link scale, ln(scale / reference). */
  readonly logScaleMedian: number;
  readonly shapes: Float64Array;
  readonly logRates: Float64Array;
}

interface Grid {
  readonly logShape: Float64Array;
  /** Probability below each point. */
  readonly below: Float64Array;
  readonly logSd: number;
}

const POINTS = 400;

export interface PosteriorAsked {
  readonly mode: string;
  readonly prior: ShapePrior;
  /** Place among the modes, from 0: it picks the coordinates of the lattice. */
  readonly place: number;
  readonly confidence: number;
}

/** The posterior of one mode: `latticePoints` equally likely laws. */
export function modePosterior(record: ModeRecord, asked: PosteriorAsked): ModePosterior {
  const grid = shapeGrid(record, asked.prior);
  const cells = latticePoints;
  const shapeTable = Float64Array.from({ length: cells }, (_, cell) => quantileOf(grid, cellMiddle(cell)));
  const rateTable = logGammaTable(record.breakCount > 0 ? record.breakCount : 1);
  const shapeOrder = latticeCells(2 * asked.place);
  const rateOrder = latticeCells(2 * asked.place + 1);
  const exposure = shapeTable.map((shape) => logExposure(record, shape));
  const shapes = new Float64Array(cells);
  const logRates = new Float64Array(cells);
  for (let k = 0; k < cells; k++) {
    const cell = shapeOrder[k] ?? 0;
    shapes[k] = shapeTable[cell] ?? 0;
    logRates[k] = (rateTable[rateOrder[k] ?? 0] ?? 0) - (exposure[cell] ?? 0);
  }
  const logScales = logRates.map((rate, k) => -rate / (shapes[k] ?? 1)).sort();
  return {
    mode: asked.mode,
    breaks: record.breakCount,
    shapeMedian: quantileOf(grid, 0.5),
    shapeInterval: {
      low: quantileOf(grid, (1 - asked.confidence) / 2),
      high: quantileOf(grid, (1 + asked.confidence) / 2),
    },
    shapeSpreadKept: grid.logSd / asked.prior.logSd,
    logScaleMedian: logScales[cells >> 1] ?? 0,
    shapes,
    logRates,
  };
}

/** ln of the density of ln(shape), without its constant. */
function logDensity(record: ModeRecord, prior: ShapePrior, logShape: number): number {
  const fromPrior = -0.5 * ((logShape - Math.log(prior.medianShape)) / prior.logSd) ** 2;
  const r = record.breakCount;
  if (r === 0) return fromPrior;
  const shape = Math.exp(logShape);
  return fromPrior + (r - 1) * logShape + r * shape * record.meanLogBreak - r * logExposure(record, shape);
}

/** First a wide search for where the density lives, then `POINTS` points across it, summed by the trapezium rule. */
function shapeGrid(record: ModeRecord, prior: ShapePrior): Grid {
  const centre = Math.log(prior.medianShape);
  const wide = spread(centre - 8 * prior.logSd, centre + 8 * prior.logSd, 161);
  const heights = wide.map((x) => logDensity(record, prior, x));
  const most = heights.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const first = heights.findIndex((height) => height > most - 25);
  const last = heights.findLastIndex((height) => height > most - 25);
  const logShape = spread(wide[Math.max(0, first - 1)] ?? 0, wide[Math.min(160, last + 1)] ?? 0, POINTS);
  const density = logShape.map((x) => Math.exp(logDensity(record, prior, x) - most));
  const below = new Float64Array(POINTS);
  for (let k = 1; k < POINTS; k++) below[k] = (below[k - 1] ?? 0) + ((density[k - 1] ?? 0) + (density[k] ?? 0)) / 2;
  const total = below[POINTS - 1] ?? 1;
  let mean = 0;
  let square = 0;
  let weight = 0;
  for (let k = 0; k < POINTS; k++) {
    weight += density[k] ?? 0;
    mean += (density[k] ?? 0) * (logShape[k] ?? 0);
  }
  mean /= weight;
  for (let k = 0; k < POINTS; k++) square += (density[k] ?? 0) * ((logShape[k] ?? 0) - mean) ** 2;
  return { logShape, below: below.map((sum) => sum / total), logSd: Math.sqrt(square / weight) };
}

function spread(from: number, to: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1));
}

function quantileOf(grid: Grid, probability: number): number {
  const { below, logShape } = grid;
  let low = 0;
  let high = below.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((below[middle] ?? 0) <= probability) low = middle;
    else high = middle;
  }
  const a = below[low] ?? 0;
  const b = below[high] ?? 1;
  const share = b > a ? (probability - a) / (b - a) : 0.5;
  return Math.exp((logShape[low] ?? 0) + share * ((logShape[high] ?? 0) - (logShape[low] ?? 0)));
}

/** ln of the gamma quantiles in the middle of the cells, for `breaks` breaks. */
function logGammaTable(breaks: number): Float64Array {
  return Float64Array.from({ length: latticePoints }, (_, cell) => Math.log(gammaQuantile(cellMiddle(cell), breaks)));
}
