export { type AnalysisOfVariance, classicAnova } from './analysis-of-variance.ts';
export { bartlett } from './bartlett.ts';
export {
  type ComparedGroup,
  type ComparedPair,
  type Comparison,
  type ComparisonRequest,
  compareGroups,
} from './comparison.ts';
export type { ComparisonSentences } from './comparison-sentences.ts';
export { dunn, type RankPair, type RankPairs } from './dunn.ts';
export { type HedgesG, hedgesG, type OmegaSquared, omegaSquared } from './effect-size.ts';
export { gamesHowell } from './games-howell.ts';
export type { Group } from './group.ts';
export { type KruskalWallis, kruskalWallis, type RankedGroup } from './kruskal-wallis.ts';
export { type Lettered, letterGroups } from './letter-groups.ts';
export { levene, type ScatterTest } from './levene.ts';
export { bonferroni, holm } from './p-adjustment.ts';
export type { PairDifference, PairwiseComparison } from './pair-difference.ts';
export {
  type Estimate,
  type RankedName,
  type RankOptions,
  type RankProbability,
  rankEstimates,
  rankProbability,
} from './rank-probability.ts';
export { type ResidualScatter, tukeyKramer } from './tukey-kramer.ts';
export {
  type UncertainNumber,
  type ValuedProduct,
  type ValueForMoney,
  valueForMoney,
  type Worth,
  type WorthTable,
} from './value-for-money.ts';
export { type WelchAnova, welchAnova } from './welch-anova.ts';
export { type TwoSampleComparison, welchTwoSample } from './welch-two-sample.ts';
