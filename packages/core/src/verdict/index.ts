export {
  type ConformityRule,
  type DecisionBounds,
  decisionBounds,
  guardForRisk,
  type RuleUncertainty,
} from './acceptance-limit.ts';
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
export {
  type AllPiecesDecision,
  decideAllPieces,
  decideMean,
  decideToleranceBound,
  type SampleRequirement,
  type ToleranceDecision,
} from './requirement.ts';
export * from './verdict.ts';
