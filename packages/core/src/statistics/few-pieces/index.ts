export { andersonDarlingNormal, andersonDarlingStatistic, type NormalityTest } from './anderson-darling.ts';
export { hansonKoopmansBasis, hansonKoopmansRank } from './basis-hanson-koopmans.ts';
export { normalBasis } from './basis-normal.ts';
export { type Basis, type BasisValue, basisConfidence, basisCoverage } from './basis-value.ts';
export { weibullBasis, weibullBasisFactor, weibullBasisFormulaFactor } from './basis-weibull.ts';
export { type BinomialTest, binomialTest } from './binomial-test.ts';
export {
  type CharacteristicValue,
  characteristicFormulaFactor,
  characteristicTableFactor,
  characteristicValue,
} from './characteristic-value.ts';
export { type DeviationInterval, deviationInterval } from './deviation-interval.ts';
export { type EsdStep, esdCritical, type GeneralizedEsd, generalizedEsd } from './generalized-esd.ts';
export { type GrubbsTest, grubbsCritical, grubbsTest, type SuspectEnd } from './grubbs.ts';
export { type HansonKoopmansDemand, hansonKoopmansFactor } from './hanson-koopmans-factor.ts';
export { type IntervalSide, type MeanInterval, meanInterval } from './mean-interval.ts';
export { type NonparametricBound, nonparametricBound } from './nonparametric-bound.ts';
export { nonparametricRank, nonparametricSampleSize, type RankDemand, rankConfidence } from './nonparametric-rank.ts';
export { type ProportionInterval, proportionInterval } from './proportion-interval.ts';
export { type FewValues, type Sample, sampleOf } from './sample.ts';
export { shapiroWilk } from './shapiro-wilk.ts';
export { type ProofRun, proofRun, proofRunSize } from './success-run.ts';
export { howeToleranceFactor, natrellaTerms, natrellaToleranceFactor } from './tolerance-approximation.ts';
export { type ToleranceBound, type ToleranceOptions, type ToleranceSide, toleranceBound } from './tolerance-bound.ts';
export {
  knownDeviationToleranceFactor,
  oneSidedToleranceFactor,
  type ToleranceDemand,
  twoSidedToleranceFactor,
} from './tolerance-factor.ts';
