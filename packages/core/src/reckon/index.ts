export type { Calculation, CalculationInput, CalculationOutput, CalculationResult } from './calculation.ts';
export { calculations, type Reckoning, reckon } from './reckoning.ts';
