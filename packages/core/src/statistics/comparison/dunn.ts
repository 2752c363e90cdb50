import { normalUpper } from '../distribution/index.ts';
import type { Group } from './group.ts';
import { type KruskalWallis, kruskalWallis, type RankedGroup } from './kruskal-wallis.ts';
import { holm } from './p-adjustment.ts';
import { pairsOf } from './pair-difference.ts';

export interface RankPair {
  readonly first: string;
  readonly second: string;
  /** Mean rank of the first less that of the second. */
  readonly meanRankDifference: number;
  readonly z: number;
  /** Two-sided, this pair alone. */
  readonly p: number;
  /** By Holm over all pairs. */
  readonly adjustedP: number;
}

export interface RankPairs {
  readonly method: string;
  readonly pairs: readonly RankPair[];
  readonly doubts: readonly string[];
}

/**
 * Every pair of groups compared by mean ranks in the pooled order, adjusted by Holm
 * (Dunn 1964, Technometrics 6, 241-252; Holm 1979). No pairs when there is nothing to rank.
 */
export function dunn(groups: readonly Group[]): RankPairs {
  return dunnOf(kruskalWallis(groups));
}

/** The pairs from the ranks of a Kruskal-Wallis test. */
export function dunnOf(ranked: KruskalWallis): RankPairs {
  const method = 'Pairs of mean ranks (Dunn 1964), adjusted by Holm (1979)';
  if (ranked.h === null) return { method, pairs: [], doubts: ranked.doubts };
  const { n, tieSum } = ranked;
  const variance = (n * (n + 1)) / 12 - tieSum / (12 * (n - 1));
  const plain = pairsOf(ranked.groups).map((pair) => rankPair(pair, variance));
  const adjusted = holm(plain.map((pair) => pair.p));
  return {
    method,
    pairs: plain.map((pair, index) => ({ ...pair, adjustedP: adjusted[index] ?? pair.p })),
    doubts: ranked.doubts,
  };
}

function rankPair({ a, b }: { readonly a: RankedGroup; readonly b: RankedGroup }, variance: number) {
  const meanRankDifference = a.meanRank - b.meanRank;
  const z = meanRankDifference / Math.sqrt(variance * (1 / a.n + 1 / b.n));
  const p = Math.min(1, 2 * normalUpper(Math.abs(z)));
  return { first: a.name, second: b.name, meanRankDifference, z, p };
}
