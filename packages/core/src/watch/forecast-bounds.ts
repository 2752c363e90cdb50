import type { RiseQuantiles } from './forecast-quantiles.ts';
import { type ForecastAxis, forecastTables } from './forecast-tables.ts';

/** For true rises of these sizes: 5 % and 95 % quantile of their distance from what was expected. */
export interface DistanceTable {
  readonly rises: readonly number[];
  readonly lowest: readonly number[];
  readonly highest: readonly number[];
}

/** Bounds of the rise that is still to come. */
export interface RiseBounds {
  readonly lower: number;
  readonly upper: number;
}

/** Keeps logarithms of rises finite, and rises far below it alike. */
const FLOOR = 0.02;
/** Quantiles nearer to the middle than this count as this far. */
const LEAST_SPREAD = 0.05;

function scale(rise: number): number {
  return Math.log(rise + FLOOR);
}

/** How far a rise lies from the middle of the quantiles, over how far the outer quantile on its side does. */
export function distanceOf(rise: number, { low, middle, high }: RiseQuantiles): number {
  const off = scale(rise) - scale(middle);
  const spread = off > 0 ? scale(high) - scale(middle) : scale(middle) - scale(low);
  return off / Math.max(LEAST_SPREAD, spread);
}

/** By how much a rise of this place in the table lies inside its limits; below 0 it lies outside. */
function margin(distances: DistanceTable, quantiles: RiseQuantiles, at: number): number {
  const distance = distanceOf(distances.rises[at] ?? 0, quantiles);
  return Math.min((distances.highest[at] ?? 0) - distance, distance - (distances.lowest[at] ?? 0));
}

/** Where the margin passes through 0 between two places of the table, of which the first lies inside. */
function crossing(distances: DistanceTable, quantiles: RiseQuantiles, inside: number, outside: number): number {
  const from = distances.rises[inside] ?? 0;
  const to = distances.rises[outside];
  if (to === undefined) return from;
  const within = margin(distances, quantiles, inside);
  const beyond = margin(distances, quantiles, outside);
  return from + ((to - from) * within) / Math.max(Number.MIN_VALUE, within - beyond);
}

/**
 * The rises for which what is seen now would be usual: those whose distance lies between the 5 % and 95 % quantile that pulls with such a rise left
 * showed. So a true rise of any size in the table is held nine times in ten, be it large (early in the pull) or small (late); quantiles
 * alone hold too few large rises and too many small ones (confidence belt, Neyman 1937).
 */
export function boundsBy(distances: DistanceTable, quantiles: RiseQuantiles): RiseBounds {
  const { rises } = distances;
  let first = -1;
  let last = -1;
  for (let at = 0; at < rises.length; at++) {
    if (margin(distances, quantiles, at) < 0) continue;
    if (first < 0) first = at;
    last = at;
  }
  if (first < 0) return { lower: quantiles.middle, upper: quantiles.middle };
  return {
    lower: crossing(distances, quantiles, first, first - 1),
    upper: crossing(distances, quantiles, last, last + 1),
  };
}

/** Bounds by the distances of this axis. */
export function riseBounds(axis: ForecastAxis, quantiles: RiseQuantiles): RiseBounds {
  return boundsBy(forecastTables[axis].distances, quantiles);
}
