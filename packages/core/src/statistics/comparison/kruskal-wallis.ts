import { chiSquaredUpper } from '../distribution/index.ts';
import { type Group, refuseMisuse } from './group.ts';
import { spreadSentence } from './plain-words.ts';
import { midRanks } from './rank.ts';

/** Ranks of one group within all values pooled. */
export interface RankedGroup {
  readonly name: string;
  readonly n: number;
  readonly rankSum: number;
  readonly meanRank: number;
}

export interface KruskalWallis {
  readonly method: string;
  readonly groups: readonly RankedGroup[];
  readonly n: number;
  readonly tieSum: number;
  /** Corrected for ties; null when there is nothing to rank. */
  readonly h: number | null;
  readonly degreesOfFreedom: number;
  /** By the chi-squared approximation. */
  readonly p: number | null;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/**
 * Do all groups come from one distribution, judged by ranks alone? Needs no normal scatter and is not led by an
 * outlying value (Kruskal and Wallis 1952, Journal of the American Statistical Association 47, 583-621).
 */
export function kruskalWallis(groups: readonly Group[]): KruskalWallis {
  refuseMisuse(groups);
  const filled = groups.filter((group) => group.values.length > 0);
  const { ranked, tieSum, n } = rankedGroups(filled);
  const reason = lackOf({ groupCount: filled.length, n, tieSum });
  const tieFactor = 1 - tieSum / (n ** 3 - n);
  const middle = (n + 1) / 2;
  const spread = ranked.reduce((sum, group) => sum + group.n * (group.meanRank - middle) ** 2, 0);
  const h = reason === null ? ((12 / (n * (n + 1))) * spread) / tieFactor : null;
  const degreesOfFreedom = Math.max(filled.length - 1, 0);
  const p = h === null ? null : chiSquaredUpper(h, degreesOfFreedom);
  const few = filled.some((group) => group.values.length < 5);
  return {
    method: 'Rank sums of all groups (Kruskal and Wallis 1952), ties corrected, chi-squared approximation',
    groups: ranked,
    n,
    tieSum,
    h,
    degreesOfFreedom,
    p,
    doubts: [
      ...groups.filter((group) => group.values.length === 0).map((group) => `${group.name} has no value`),
      ...(reason === null ? [] : [reason]),
      ...(reason === null && few ? ['with fewer than five values in a group the p value of ranks is rough'] : []),
    ],
    sentence: spreadSentence({ p, groupCount: filled.length, what: 'ranks', reason }),
  };
}

function rankedGroups(groups: readonly Group[]): {
  readonly ranked: readonly RankedGroup[];
  readonly tieSum: number;
  readonly n: number;
} {
  const values = groups.flatMap((group) => group.values);
  const { ranks, tieSum } = midRanks(values);
  let from = 0;
  const ranked = groups.map((group) => {
    const n = group.values.length;
    const rankSum = ranks.slice(from, from + n).reduce((sum, rank) => sum + rank, 0);
    from += n;
    return { name: group.name, n, rankSum, meanRank: rankSum / n };
  });
  return { ranked, tieSum, n: values.length };
}

function lackOf(have: { readonly groupCount: number; readonly n: number; readonly tieSum: number }): string | null {
  if (have.groupCount < 2) return 'a comparison needs two groups or more';
  if (have.tieSum === have.n ** 3 - have.n) return 'all values are equal';
  return null;
}
