import { summarise } from '../statistics/summary.ts';

/** What repeated readings of one quantity say of their mean (JCGM 100:2008 4.2). */
export interface RepeatedReadings {
  readonly n: number;
  readonly mean: number | null;
  readonly sd: number | null;
  /** Of the mean, sd / sqrt n; null below two readings. */
  readonly standardUncertainty: number | null;
  /** n - 1; 0 for a single reading. */
  readonly degreesOfFreedom: number;
}

/** Type A evaluation: mean, standard deviation, standard uncertainty of the mean. Throws a RangeError for NaN. */
export function repeatedReadings(values: readonly number[]): RepeatedReadings {
  const { n, mean, sd } = summarise(values);
  return {
    n,
    mean,
    sd,
    standardUncertainty: sd === null ? null : sd / Math.sqrt(n),
    degreesOfFreedom: Math.max(0, n - 1),
  };
}

/**
 * Correlation of the means of two quantities read together, pair by pair (JCGM 100:2008 5.2.3, C.3.6).
 * Null below two pairs or where one does not scatter. Throws a RangeError for unequal lengths.
 */
export function correlationOfMeans(first: readonly number[], second: readonly number[]): number | null {
  if (first.length !== second.length) throw new RangeError('quantities read together have as many readings each');
  const [a, b] = [summarise(first), summarise(second)];
  if (a.mean === null || b.mean === null || !a.sd || !b.sd) return null;
  let products = 0;
  for (const [index, value] of first.entries()) products += (value - a.mean) * ((second[index] ?? 0) - b.mean);
  return products / ((first.length - 1) * a.sd * b.sd);
}

/** Readings of several days or sessions: mean and standard deviation of each, from the same number of readings. */
export interface GroupedReadings {
  readonly means: readonly number[];
  readonly sds: readonly number[];
  readonly readingsPerGroup: number;
}

/** Whether the groups differ by more than the readings within them, and what that makes of the mean. */
export interface BetweenGroups {
  readonly mean: number;
  /** Standard deviation of the group means. */
  readonly sdOfMeans: number;
  /** Standard deviation of a reading, from the scatter between groups, and from that within. */
  readonly sdFromBetween: number;
  readonly sdFromWithin: number;
  readonly ratio: number | null;
  readonly degreesOfFreedom: { readonly between: number; readonly within: number };
  /** Of the mean: from the group means, right whether or not the groups differ; and pooled, right only where they do not. */
  readonly standardUncertainty: number;
  readonly standardUncertaintyPooled: number;
}

/**
 * Analysis of variance between days (JCGM 100:2008 H.5). Null below two groups or two readings a group.
 * The ratio is to be held against F with the degrees of freedom given; it is null where nothing scatters within.
 */
export function betweenGroups({ means, sds, readingsPerGroup: k }: GroupedReadings): BetweenGroups | null {
  if (means.length !== sds.length) throw new RangeError('each group has a mean and a standard deviation');
  const { n: groups, mean, sd: sdOfMeans } = summarise(means);
  if (mean === null || sdOfMeans === null || k < 2) return null;
  const within = sds.reduce((sum, sd) => sum + sd * sd, 0) / groups;
  const between = k * sdOfMeans ** 2;
  const freedom = { between: groups - 1, within: groups * (k - 1) };
  const pooled = (freedom.between * between + freedom.within * within) / (groups * k - 1);
  return {
    mean,
    sdOfMeans,
    sdFromBetween: Math.sqrt(between),
    sdFromWithin: Math.sqrt(within),
    ratio: within === 0 ? null : between / within,
    degreesOfFreedom: freedom,
    standardUncertainty: sdOfMeans / Math.sqrt(groups),
    standardUncertaintyPooled: Math.sqrt(pooled / (groups * k)),
  };
}
