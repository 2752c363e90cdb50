export {
  type ConformityRule,
  type DecisionBounds,
  decisionBounds,
  guardForRisk,
  type RuleUncertainty,
} from './acceptance-limit.ts';
export { type AllPiecesDecision, decideAllPieces } from './all-pieces.ts';
export {
  type ConformanceProbability,
  type ConformityLimits,
  conformanceProbability,
  type UncertainValue,
} from './conformance-probability.ts';
export { type ConformityDecision, type ConformityValue, decideConformity } from './conformity.ts';
export {
  type GlobalRisk,
  type GlobalRiskInput,
  type GuardForGlobalRisk,
  globalRisk,
  guardForGlobalRisk,
  type PriorSpread,
} from './global-risk.ts';
export * from './judge.ts';
export { decideMean, type MeanDecision, type SampleRequirement } from './mean-requirement.ts';
export { decideToleranceBound, type ToleranceDecision } from './tolerance-requirement.ts';
export * from './verdict.ts';
