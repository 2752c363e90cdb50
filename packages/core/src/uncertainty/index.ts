export { type AreaFacts, areaBudget, areaModel, type LegDiameters } from './area-model.ts';
export { type Budget, type BudgetInput, type BudgetLine, type BudgetTerm, budget, contributionsOf } from './budget.ts';
export { budgetSentence } from './budget-sentence.ts';
export { type CalibrationLine, type CalibrationPoints, calibrationLine, correctionAt } from './calibration-line.ts';
export * from './combine.ts';
export type { Correlation } from './correlation.ts';
export { type Coverage, type CoverageWish, coverage } from './coverage.ts';
export { type CoverageInterval, coverageIntervals } from './coverage-interval.ts';
export { type CalliperKnowledge, type DimensionFacts, dimensionBudget, dimensionModel } from './dimension-model.ts';
export { type ElongationFacts, elongationBudget, elongationModel } from './elongation-model.ts';
export { type ForceFacts, forceBudget, forceModel, type RigKnowledge } from './force-model.ts';
export {
  estimated,
  evenlyWithin,
  freedomOfEstimate,
  type InputDistribution,
  type InputDistributionKind,
  type InputStatement,
  type Moments,
  momentsOf,
  statementOf,
} from './input-distribution.ts';
export {
  type ExtensionClass,
  extensionClasses,
  extensionClassOf,
  extensionErrorOf,
  type ForceClass,
  forceClasses,
  forceClassOf,
  leastForceOfClass,
} from './instrument-class.ts';
export type { Certificate, KnownScatter, KnownValue } from './instrument-input.ts';
export { type MonteCarloInput, type MonteCarloResult, monteCarlo, numericalTolerance } from './monte-carlo.ts';
export {
  type JointPropagation,
  type MeasurementModel,
  type ModelInput,
  type Propagation,
  propagate,
  propagateJointly,
} from './propagation.ts';
export * from './rounding.ts';
export { reliabilityOfScatter } from './scatter-reliability.ts';
export { knownFrom, type StressFacts, stressBudget, stressModel } from './stress-model.ts';
export {
  type BetweenGroups,
  betweenGroups,
  correlationOfMeans,
  type GroupedReadings,
  type RepeatedReadings,
  repeatedReadings,
} from './type-a.ts';
export {
  type GumValidation,
  type ModelRun,
  monteCarloOfModel,
  type ValidationOptions,
  validateGum,
  validateModel,
} from './validate-gum.ts';
export {
  type CoatingDensity,
  type CoatingGaugeKnowledge,
  hotDipDensity,
  type StrippedZincFacts,
  strippedZincBudget,
  strippedZincModel,
  type ZincThicknessFacts,
  zincMassBudget,
  zincMassModel,
  zincThicknessBudget,
  zincThicknessModel,
} from './zinc-model.ts';
