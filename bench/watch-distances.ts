import { type DistanceTable, distanceOf } from '../packages/core/src/watch/forecast-bounds.ts';
import type { RiseQuantiles } from '../packages/core/src/watch/forecast-quantiles.ts';

/** Rises of the table; above 0.5 there are too few pulls, and the distances at 0.5 stand for them. */
const RISES = [0, 0.003, 0.006, 0.01, 0.015, 0.02, 0.03, 0.045, 0.06, 0.08, 0.1, 0.13, 0.16, 0.2, 0.25, 0.3, 0.35];
const LARGE_RISES = [0.4, 0.45, 0.5];
const LARGEST_RISES = [0.6, 0.7];
const TAIL = 0.05;
/** Moments whose rise is this near, on the scale of ln(rise + floor), count as having it. */
const NEAR = 0.03;
const FLOOR = 0.02;

interface Seen {
  readonly pull: number;
  readonly at: number;
  readonly distance: number;
}

interface Weighted {
  readonly distance: number;
  readonly weight: number;
}

/** Moments at one rise, each pull weighing one. */
function momentsAt(seen: readonly Seen[], rise: number): Weighted[] {
  const at = Math.log(rise + FLOOR);
  const own = seen.filter((each) => Math.abs(each.at - at) < NEAR);
  const counts = new Map<number, number>();
  for (const { pull } of own) counts.set(pull, (counts.get(pull) ?? 0) + 1);
  return own
    .map(({ distance, pull }) => ({ distance, weight: 1 / (counts.get(pull) ?? 1) }))
    .sort((a, b) => a.distance - b.distance);
}

function quantileOf(sorted: readonly Weighted[], share: number): number {
  const all = sorted.reduce((sum, { weight }) => sum + weight, 0);
  let sum = 0;
  for (const { distance, weight } of sorted) {
    sum += weight;
    if (sum >= share * all) return Number(distance.toPrecision(4));
  }
  return 0;
}

/** One moment of a pull that grew no model: what was expected, and the rise that came. */
interface MeasuredMoment {
  readonly pull: number;
  readonly rise: number;
  readonly quantiles: RiseQuantiles;
}

/** What distances pulls showed that still had such a rise before them: 5 % and 95 % quantile. */
export function distancesOf(moments: readonly MeasuredMoment[]): DistanceTable {
  const seen = moments.map(({ pull, rise, quantiles }) => ({
    pull,
    at: Math.log(rise + FLOOR),
    distance: distanceOf(rise, quantiles),
  }));
  const places = [...RISES, ...LARGE_RISES].map((rise) => momentsAt(seen, rise));
  const withLargest = (values: readonly number[]): number[] => [
    ...values,
    ...LARGEST_RISES.map(() => values.at(-1) ?? 0),
  ];
  return {
    rises: [...RISES, ...LARGE_RISES, ...LARGEST_RISES],
    lowest: withLargest(places.map((place) => quantileOf(place, TAIL))),
    highest: withLargest(places.map((place) => quantileOf(place, 1 - TAIL))),
  };
}
