import { InputError } from '../errors.ts';
import { type CalculationInput, given } from './calculation.ts';

type Inputs = Readonly<Record<string, number>>;

/** A required chance or share in per cent, between 0 and 100. */
export function chancePct(key: string, meaning: string): CalculationInput {
  return { key, unit: '%', meaning, required: true, minimum: 0 };
}

/** A chance in per cent as a number between 0 and 1; `otherwise` where it was left out. */
export function chanceOf(inputs: Inputs, key: string, otherwise?: number): number {
  const percent = inputs[key] ?? otherwise ?? Number.NaN;
  if (percent > 0 && percent < 100) return percent / 100;
  throw new InputError('reckon/chance', `${key} must lie between 0 and 100 %, not ${percent}.`, { key, percent });
}

/** More pieces or readings are no count of a bench; the sums over them would lose their digits, or never end. */
const greatestCount = 100_000;

/** A count from `least` to 100000. */
export function countOf(inputs: Inputs, key: string, least: number): number {
  const count = given(inputs, key);
  if (Number.isInteger(count) && count >= least && count <= greatestCount) return count;
  throw new InputError(
    'reckon/count',
    `${key} must be a whole number from ${least} to ${greatestCount}, not ${count}.`,
    { key, count },
  );
}

/** A required number of any sign. */
export function number(key: string, unit: string, meaning: string): CalculationInput {
  return { key, unit, meaning, required: true };
}

/** A number of any sign that may be left out. */
export function optionalNumber(key: string, unit: string, meaning: string): CalculationInput {
  return { key, unit, meaning, required: false };
}

/** A required input from 0 on. */
export function from0(key: string, unit: string, meaning: string): CalculationInput {
  return { key, unit, meaning, required: true, minimum: 0, mayBeMinimum: true };
}

/** Limits of a requirement, of which at least one must be given. */
export const limitInputs: readonly CalculationInput[] = [
  optionalNumber('lowerLimit', 'any', 'lower limit of the specification'),
  optionalNumber('upperLimit', 'any', 'upper limit of the specification, in the same unit'),
];

export function limitsOf(inputs: Inputs): { readonly lower: number | null; readonly upper: number | null } {
  const limits = { lower: inputs.lowerLimit ?? null, upper: inputs.upperLimit ?? null };
  if (limits.lower === null && limits.upper === null)
    throw new InputError('reckon/no-limit', 'Give lowerLimit, upperLimit or both.');
  if (limits.lower !== null && limits.upper !== null && limits.upper < limits.lower)
    throw new InputError('reckon/crossed-limits', `upperLimit ${limits.upper} lies below lowerLimit ${limits.lower}.`);
  return limits;
}
