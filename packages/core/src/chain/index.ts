export { kilogramsPerPound, kilonewtonsPerPoundForce } from './bench-unit.ts';
export type { LengthClass } from './choice.ts';
export { gradeDefinitionId, gradeSpecification } from './grade-definition.ts';
export {
  breakingForce_kN,
  gradeOf,
  meanStress_N_per_mm2,
  nominalArea_mm2,
  standardGravity_m_per_s2,
  studLinkLoad_kN,
  workingLoadLimitLifting_t,
} from './grade-formula.ts';
export {
  apparentStrainRate_per_s,
  forceRate_kN_per_s,
  type LinkGeometry,
  lengthOverLinks_mm,
  linkGeometry,
  stressRate_N_per_mm2_per_s,
  totalUltimateElongation_pct,
} from './link-formula.ts';
export {
  type DraftFault,
  isChangedLimit,
  type LimitSide,
  type OwnCopy,
  type OwnDraft,
  type OwnLimit,
  ownCopy,
  ownSides,
  ownStandardFrom,
} from './own-draft.ts';
export { ownStandardFaults, parseOwnStandard } from './own-standard.ts';
export { nearestR10, preferredNumbers, roundDownR40, roundUpR20, toPrecision3 } from './preferred-number.ts';
export { evaluateExpression } from './rule-expression.ts';
export { type RuleFunction, type RuleVariables, ruleFunction } from './rule-function.ts';
export {
  type Row,
  type Rule,
  type Rulebook,
  rulebook,
  type Source,
  type StandardEntry,
  type Table,
  type TableCheck,
} from './rulebook.ts';
export { type RulebookEntry, rulebookIndex, sizesFor } from './rulebook-index.ts';
export type { ListedSize } from './size-selection.ts';
export * from './specification.ts';
export {
  compareSpecifications,
  type LimitComparison,
  type LimitRelation,
  type SizeFreeComparison,
} from './specification-comparison.ts';
export { type SpecificationRequest, specificationFor } from './specification-for.ts';
export {
  findSpecifications,
  type ListedSpecification,
  listSpecifications,
  type SpecificationSearch,
} from './specification-list.ts';
export { type OwnStandard, standardId } from './standard-selection.ts';
