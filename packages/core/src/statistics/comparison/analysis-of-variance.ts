import { fisherFUpper } from '../distribution/index.ts';
import { type CentredGroup, centred, type Group } from './group.ts';
import { spreadSentence } from './plain-words.ts';

/** The table of a classic one-way analysis of variance. F and p are null where they cannot be had; `doubts` says why. */
export interface AnalysisOfVariance {
  readonly method: string;
  readonly groupCount: number;
  readonly n: number;
  readonly sumOfSquaresBetween: number;
  readonly sumOfSquaresWithin: number;
  readonly degreesOfFreedomBetween: number;
  readonly degreesOfFreedomWithin: number;
  readonly meanSquareBetween: number | null;
  readonly meanSquareWithin: number | null;
  readonly f: number | null;
  readonly p: number | null;
  /** Share of the whole sum of squares that lies between the groups. */
  readonly rSquared: number | null;
  /** Pooled standard deviation within the groups. */
  readonly sdWithin: number | null;
  /** Standard deviation of the group means proper, scatter within taken off; 0 when the means scatter less than that. */
  readonly sdBetween: number | null;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * Classic one-way analysis of variance (Fisher), which takes every group to scatter equally; see `welchAnova` for when
 * they do not. Groups without a value are left out and named. Digits: NIST StRD analysis-of-variance sets.
 */
export function classicAnova(groups: readonly Group[]): AnalysisOfVariance {
  const { groups: filled, n, empty } = centred(groups);
  const doubts = empty.map((name) => `${name} has no value and is left out`);
  return anovaOf(filled, { n, doubts });
}

/** The table from moments: the caller has the values centred already. */
export function anovaOf(
  groups: readonly CentredGroup[],
  { n, doubts }: { readonly n: number; readonly doubts: readonly string[] },
): AnalysisOfVariance {
  const between = sumOfSquaresBetween(groups, n);
  const within = groups.reduce((sum, group) => sum + group.sumOfSquares, 0);
  const dfBetween = Math.max(groups.length - 1, 0);
  const dfWithin = n - groups.length;
  const msBetween = dfBetween > 0 ? between / dfBetween : null;
  const msWithin = dfWithin > 0 ? within / dfWithin : null;
  const reason = lackOf({ groupCount: groups.length, dfWithin, within });
  const f = reason === null && msBetween !== null && msWithin !== null ? msBetween / msWithin : null;
  const p = f === null ? null : fisherFUpper(f, dfBetween, dfWithin);
  const whole = between + within;
  return {
    method: 'One-way analysis of variance (Fisher 1925), equal variances taken',
    groupCount: groups.length,
    n,
    sumOfSquaresBetween: between,
    sumOfSquaresWithin: within,
    degreesOfFreedomBetween: dfBetween,
    degreesOfFreedomWithin: dfWithin,
    meanSquareBetween: msBetween,
    meanSquareWithin: msWithin,
    f,
    p,
    rSquared: whole > 0 ? between / whole : null,
    sdWithin: msWithin === null ? null : Math.sqrt(msWithin),
    sdBetween: sdBetween(groups, { n, msBetween, msWithin }),
    doubts: reason === null ? doubts : [...doubts, reason],
    sentence: spreadSentence({ p, groupCount: groups.length, what: 'means', reason }),
  };
}

function sumOfSquaresBetween(groups: readonly CentredGroup[], n: number): number {
  if (n === 0) return 0;
  const grand = groups.reduce((sum, group) => sum + group.n * group.offset, 0) / n;
  // The second sum takes off what rounding of the grand mean leaves behind.
  const remainder = groups.reduce((sum, group) => sum + group.n * (group.offset - grand), 0);
  const squares = groups.reduce((sum, group) => sum + group.n * (group.offset - grand) ** 2, 0);
  return Math.max(squares - remainder ** 2 / n, 0);
}

function lackOf(have: {
  readonly groupCount: number;
  readonly dfWithin: number;
  readonly within: number;
}): string | null {
  if (have.groupCount < 2) return 'a comparison needs two groups or more';
  if (have.dfWithin < 1) return 'every group has one value only: there is no scatter to compare the means with';
  if (have.within === 0) return 'the values within each group are all equal: there is no scatter to compare with';
  return null;
}

function sdBetween(
  groups: readonly CentredGroup[],
  table: { readonly n: number; readonly msBetween: number | null; readonly msWithin: number | null },
): number | null {
  const { n, msBetween, msWithin } = table;
  if (msBetween === null || msWithin === null) return null;
  const size = (n - groups.reduce((sum, group) => sum + group.n ** 2, 0) / n) / (groups.length - 1);
  return Math.sqrt(Math.max(msBetween - msWithin, 0) / size);
}
