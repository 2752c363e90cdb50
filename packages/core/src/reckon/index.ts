export type { Calculation, CalculationInput, CalculationOutput, CalculationResult } from './calculation.ts';
export { type InputFault, type InputReading, readInputs, readNumber } from './input-reading.ts';
export { type CalculationGroup, calculationGroups, calculations, type Reckoning, reckon } from './reckoning.ts';
export { inputsThatTake, meaningOf, type TakingInput } from './shared-meaning.ts';
