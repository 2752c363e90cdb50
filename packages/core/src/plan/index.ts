export {
  type AllPassChance,
  type ConformityPlan,
  type ConformityQuestion,
  chanceAllPass,
  piecesToShowConformity,
  powerToShowConformity,
} from './conformity-plan.ts';
export {
  type DifferencePlan,
  type DifferenceQuestion,
  detectableDifference,
  piecesToTellApart,
  powerToTellApart,
} from './difference-plan.ts';
export {
  detectableShare,
  type FractionPlan,
  type FractionQuestion,
  piecesToBoundFraction,
  piecesToTellSharesApart,
  powerToTellSharesApart,
  type ShareQuestion,
} from './fraction-plan.ts';
export {
  checkMachine,
  type MachineCheck,
  type MachineFinding,
  type PlannedForces,
  type PlannedRig,
} from './machine-check.ts';
export { type OrderedPiece, type PullOrder, type PullOrderInput, pullOrder } from './pull-order.ts';
export { type AmongProducts, powerAmongProducts, type SimulatedPower, simulatePower } from './simulated-power.ts';
