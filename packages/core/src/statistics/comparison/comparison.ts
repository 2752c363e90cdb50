import { studentQuantile } from '../distribution/index.ts';
import { type AnalysisOfVariance, anovaOf } from './analysis-of-variance.ts';
import { bartlett } from './bartlett.ts';
import { comparisonDoubts } from './comparison-doubts.ts';
import { type ComparisonSentences, comparisonSentences } from './comparison-sentences.ts';
import { dunnOf, type RankPairs } from './dunn.ts';
import { type HedgesG, hedgesOf, type OmegaSquared, omegaSquared } from './effect-size.ts';
import { gamesHowellOf } from './games-howell.ts';
import { type CentredGroup, type CentredGroups, centred, type Group, refuseConfidence } from './group.ts';
import { type KruskalWallis, kruskalWallis } from './kruskal-wallis.ts';
import { letterGroups } from './letter-groups.ts';
import { levene, type ScatterTest } from './levene.ts';
import { type PairDifference, type PairwiseComparison, pairSentence } from './pair-difference.ts';
import { type RangeFamily, rangeFamily } from './range-family.ts';
import { type RankProbability, rankGroups } from './rank-probability.ts';
import { tukeyOf } from './tukey-kramer.ts';
import { type WelchAnova, welchOf } from './welch-anova.ts';

export interface ComparisonRequest {
  /** Values all in one unit. */
  readonly groups: readonly Group[];
  /** Default 0.95: of each interval, and jointly of all pairs. */
  readonly confidence?: number;
  /** Of the draws behind the order of the groups. */
  readonly seed: number;
  readonly draws?: number;
  /** Default true. */
  readonly higherIsBetter?: boolean;
  /** What becomes of groups of one value in the order; see `rankProbability`. */
  readonly singles?: 'leave out' | 'pool';
  /** For the sentences. */
  readonly unit?: string;
}

/** One group as compared; the highest mean comes first. */
export interface ComparedGroup {
  readonly name: string;
  readonly n: number;
  /** How many values known only as "at least" were left out. */
  readonly leftOut: number;
  readonly mean: number;
  readonly sd: number | null;
  /** Student limits of this mean alone. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Groups that share a letter are not distinguishable; empty when the group could not be judged. */
  readonly letters: string;
}

export interface ComparedPair extends PairDifference {
  readonly effect: HedgesG;
  readonly sentence: string;
}

export interface Comparison {
  readonly method: string;
  readonly confidence: number;
  readonly groups: readonly ComparedGroup[];
  /** Groups without a value that could be used. */
  readonly empty: readonly string[];
  readonly welch: WelchAnova;
  readonly classic: AnalysisOfVariance;
  readonly effect: OmegaSquared;
  readonly ranks: KruskalWallis;
  readonly equalScatter: { readonly brownForsythe: ScatterTest; readonly bartlett: ScatterTest };
  /** Games-Howell: the pairs the letters rest on. */
  readonly pairs: readonly ComparedPair[];
  readonly pooledPairs: PairwiseComparison;
  readonly rankPairs: RankPairs;
  readonly order: RankProbability;
  readonly doubts: readonly string[];
  readonly sentences: ComparisonSentences;
}

/**
 * Everything a comparison of products can say, from one set of values: whether any differ, which pairs, by how much,
 * in what order and how surely, and what stands against it. The main line takes unequal variances (Welch, Games-Howell);
 * classic and rank procedures stand beside it. Values known only as "at least" are counted and left out.
 */
export function compareGroups(request: ComparisonRequest): Comparison {
  const confidence = request.confidence ?? 0.95;
  refuseConfidence(confidence);
  const moments = byMean(centred(request.groups), request.higherIsBetter ?? true);
  const { groups, n, empty } = moments;
  const classic = anovaOf(groups, { n, doubts: [] });
  const ranks = kruskalWallis(request.groups);
  const family = rangeFamily(Math.max(groups.length, 2));
  const pairs = pairsWithEffect(groups, { confidence, empty, family, unit: request.unit ?? '' });
  const compared = groups.map((group) => comparedGroup(group, { ...request, confidence, centre: moments.centre }));
  const lettered = withLetters(compared, pairs);
  const equalScatter = { brownForsythe: levene(request.groups), bartlett: bartlett(request.groups) };
  const welch = welchOf(groups, empty);
  const order = rankGroups(groups, { ...request, empty });
  return {
    method: 'Welch (1951), Games and Howell (1976), letters by Piepho (2004), order by posterior draws',
    confidence,
    groups: lettered,
    empty,
    welch,
    classic,
    effect: omegaSquared(classic),
    ranks,
    equalScatter,
    pairs,
    pooledPairs: tukeyOf(groups, { n, confidence, empty, family }),
    rankPairs: dunnOf(ranks),
    order,
    doubts: comparisonDoubts({ request, groups: lettered, welch, equalScatter, ranks, order, confidence }),
    sentences: comparisonSentences({ groups: lettered, welch, pairs, order, confidence, unit: request.unit ?? '' }),
  };
}

function byMean(moments: CentredGroups, higherIsBetter: boolean): CentredGroups {
  const sign = higherIsBetter ? -1 : 1;
  return { ...moments, groups: [...moments.groups].sort((a, b) => sign * (a.offset - b.offset)) };
}

function pairsWithEffect(
  groups: readonly CentredGroup[],
  options: {
    readonly confidence: number;
    readonly empty: readonly string[];
    readonly family: RangeFamily;
    readonly unit: string;
  },
): ComparedPair[] {
  const { confidence, unit } = options;
  const named = new Map(groups.map((group) => [group.name, group]));
  return gamesHowellOf(groups, options).pairs.flatMap((pair) => {
    const [a, b] = [named.get(pair.first), named.get(pair.second)];
    if (!a || !b) return [];
    return [{ ...pair, effect: hedgesOf({ a, b }, confidence), sentence: told(pair, { confidence, unit }) }];
  });
}

function told(pair: PairDifference, by: { readonly confidence: number; readonly unit: string }): string {
  const { lower, upper } = pair;
  if (lower === null || upper === null) {
    return `${pair.first} and ${pair.second} cannot be told apart or alike: ${pair.reason ?? 'too little is known'}.`;
  }
  return pairSentence({ ...pair, lower, upper, ...by, joint: true });
}

function comparedGroup(
  group: CentredGroup,
  request: { readonly groups: readonly Group[]; readonly confidence: number; readonly centre: number },
): Omit<ComparedGroup, 'letters'> {
  const { name, n, variance } = group;
  const mean = request.centre + group.offset;
  const half =
    variance === null ? null : studentQuantile(0.5 + request.confidence / 2, n - 1) * Math.sqrt(variance / n);
  return {
    name,
    n,
    leftOut: request.groups.find((given) => given.name === name)?.atLeast?.length ?? 0,
    mean,
    sd: variance === null ? null : Math.sqrt(variance),
    lower: half === null ? null : mean - half,
    upper: half === null ? null : mean + half,
  };
}

/** Two groups that could not be judged against each other share a letter: nothing tells them apart. */
function withLetters(
  groups: readonly Omit<ComparedGroup, 'letters'>[],
  pairs: readonly PairDifference[],
): ComparedGroup[] {
  const apart = new Set(pairs.filter((pair) => pair.distinguishable).map((pair) => `${pair.first}\n${pair.second}`));
  const judged = groups.filter((group) => group.sd !== null).map((group) => group.name);
  const lettered = letterGroups(judged, (a, b) => apart.has(`${a}\n${b}`) || apart.has(`${b}\n${a}`));
  const letters = new Map(lettered.map((entry) => [entry.name, entry.letters]));
  return groups.map((group) => ({ ...group, letters: letters.get(group.name) ?? '' }));
}
