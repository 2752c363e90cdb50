import { anovaOf } from './analysis-of-variance.ts';
import { centred, type Group, meanOf, roundingOf } from './group.ts';
import { spreadSentence } from './plain-words.ts';

export interface ScatterTest {
  readonly method: string;
  /** The test statistic; null where it cannot be had. */
  readonly statistic: number | null;
  readonly degreesOfFreedomBetween: number;
  readonly degreesOfFreedomWithin: number | null;
  readonly p: number | null;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * Do the groups scatter equally? Distances from each group's centre are put to an analysis of variance: from the mean
 * (Levene 1960) or, safer with skew values, from the median (Brown and Forsythe 1974, JASA 69, 364-367).
 * Groups of one or two values cannot show a difference (both distances are equal) but do take part; when no group has
 * three, the test is not made.
 */
export function levene(groups: readonly Group[], options: { readonly centre?: 'mean' | 'median' } = {}): ScatterTest {
  const centre = options.centre ?? 'median';
  const { centre: shift } = centred(groups);
  const used = groups.filter((group) => group.values.length > 0);
  const distances = used.map((group) => ({ name: group.name, values: distancesFrom(centre, group.values, shift) }));
  const { groups: moments, n } = centred(distances);
  const table = anovaOf(moments, { n, doubts: [] });
  const floor = n * roundingOf(used.flatMap((group) => group.values)) ** 2;
  const reason = lackOf(used, table.sumOfSquaresWithin <= floor);
  const p = reason === null ? table.p : null;
  const doubts = reason === null ? fewDoubts(used) : [reason];
  return {
    method:
      centre === 'median'
        ? 'Equality of scatter, distances from the median (Brown and Forsythe 1974)'
        : 'Equality of scatter, distances from the mean (Levene 1960)',
    statistic: reason === null ? table.f : null,
    degreesOfFreedomBetween: table.degreesOfFreedomBetween,
    degreesOfFreedomWithin: table.degreesOfFreedomWithin,
    p,
    doubts,
    sentence: spreadSentence({ p, groupCount: used.length, what: 'scatters', reason }),
  };
}

function distancesFrom(centre: 'mean' | 'median', values: readonly number[], shift: number): number[] {
  const shifted = values.map((value) => value - shift);
  const middle = centre === 'mean' ? meanOf(shifted) : medianOf(shifted);
  return shifted.map((value) => Math.abs(value - middle));
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? upper) + upper) / 2;
}

function lackOf(groups: readonly Group[], noSpread: boolean): string | null {
  if (groups.length < 2) return 'a comparison needs two groups or more';
  if (groups.every((group) => group.values.length < 3)) return 'no group has three values or more';
  if (noSpread) return 'the distances from the centre do not vary within any group';
  return null;
}

function fewDoubts(groups: readonly Group[]): string[] {
  const least = groups.reduce((few, group) => Math.min(few, group.values.length), Number.POSITIVE_INFINITY);
  return least < 10 ? ['with fewer than ten values in a group even a large difference of scatter may go unseen'] : [];
}
