import { fisherFUpper } from '../distribution/index.ts';
import { type CentredGroup, centred, type Group } from './group.ts';
import { spreadSentence } from './plain-words.ts';

export interface WelchAnova {
  readonly method: string;
  /** Names of the groups the test rests on. */
  readonly groups: readonly string[];
  readonly f: number | null;
  readonly degreesOfFreedomBetween: number;
  readonly degreesOfFreedomWithin: number | null;
  readonly p: number | null;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

interface Weighted {
  readonly n: number;
  readonly offset: number;
  readonly weight: number;
}

/**
 * Welch's one-way analysis of variance: are the means equal, the scatter of each group being its own?
 * (Welch 1951, Biometrika 38, 330-336.) A group of one value, or of equal values only, has no scatter of its own and is
 * left out and named. F, its degrees of freedom and p are null when fewer than two groups remain.
 */
export function welchAnova(groups: readonly Group[]): WelchAnova {
  const { groups: filled, empty } = centred(groups);
  return welchOf(filled, empty);
}

/** The test from moments: the caller has the values centred already. */
export function welchOf(filled: readonly CentredGroup[], empty: readonly string[]): WelchAnova {
  const used = filled.filter((group) => (group.variance ?? 0) > 0);
  const doubts = [...empty.map((name) => `${name} has no value and is left out`), ...filled.flatMap(leftOut)];
  const reason = used.length < 2 ? 'fewer than two groups have a scatter of their own' : null;
  const test = reason === null ? statistic(used.map(weighted)) : null;
  const p = test === null ? null : fisherFUpper(test.f, used.length - 1, test.degreesOfFreedom);
  return {
    method: "Welch's one-way analysis of variance, variances unequal (Welch 1951)",
    groups: used.map((group) => group.name),
    f: test?.f ?? null,
    degreesOfFreedomBetween: Math.max(used.length - 1, 0),
    degreesOfFreedomWithin: test?.degreesOfFreedom ?? null,
    p,
    doubts: reason === null ? doubts : [...doubts, reason],
    sentence: spreadSentence({ p, groupCount: used.length, what: 'means', reason }),
  };
}

function leftOut(group: CentredGroup): string[] {
  if (group.variance === null) return [`${group.name} has one value: no scatter of its own, so it is left out`];
  if (group.variance > 0) return [];
  return [`${group.name}: all ${group.n} values are equal, which is no scatter to go by, so it is left out`];
}

function weighted({ n, offset, variance }: CentredGroup): Weighted {
  return { n, offset, weight: n / (variance ?? 1) };
}

function statistic(groups: readonly Weighted[]): { readonly f: number; readonly degreesOfFreedom: number } {
  const k = groups.length;
  const whole = groups.reduce((sum, { weight }) => sum + weight, 0);
  const centre = groups.reduce((sum, { weight, offset }) => sum + (weight / whole) * offset, 0);
  const spread = groups.reduce((sum, { weight, offset }) => sum + weight * (offset - centre) ** 2, 0);
  const imbalance = groups.reduce((sum, { weight, n }) => sum + (1 - weight / whole) ** 2 / (n - 1), 0) / (k ** 2 - 1);
  return { f: spread / ((k - 1) * (1 + 2 * (k - 2) * imbalance)), degreesOfFreedom: 1 / (3 * imbalance) };
}
