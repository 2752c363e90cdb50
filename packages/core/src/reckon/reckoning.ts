import { InputError } from '../errors.ts';
import type { Calculation, CalculationInput, CalculationResult } from './calculation.ts';
import { conformityCalculations } from './conformity-calculations.ts';
import { decisionCalculations } from './decision-calculations.ts';
import { gradeCalculations } from './grade-calculations.ts';
import { lengthCalculations } from './length-calculations.ts';
import { planningCalculations } from './planning-calculations.ts';
import { strengthCalculations } from './strength-calculations.ts';
import { uncertaintyCalculations } from './uncertainty-calculations.ts';
import { unitCalculations } from './unit-calculations.ts';

/** Every single calculation there is, in the order in which they are listed. */
export const calculations: readonly Calculation[] = [
  ...gradeCalculations,
  ...lengthCalculations,
  ...strengthCalculations,
  ...decisionCalculations,
  ...conformityCalculations,
  ...uncertaintyCalculations,
  ...planningCalculations,
  ...unitCalculations,
];

/** A calculation that was run: what it took, what it gave, and on what it rests. */
export interface Reckoning {
  readonly name: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly outputs: CalculationResult;
  readonly source: string;
}

/**
 * Runs one calculation by its name. Inputs may be numbers or text with a decimal point or comma.
 *
 * @throws InputError `reckon/unknown` (naming the nearest ones), `reckon/inputs` (every fault of the inputs at once:
 *   unknown, missing, not a number, out of range), or the calculation's own
 */
export function reckon(name: string, inputs: Readonly<Record<string, string | number>>): Reckoning {
  const calculation = calculationNamed(name);
  const faults: string[] = [];
  const numbers: Record<string, number> = {};
  for (const key of Object.keys(inputs)) {
    if (!calculation.inputs.some((input) => input.key === key)) faults.push(`${key} is not an input`);
  }
  for (const input of calculation.inputs) {
    const read = readInput(input, inputs[input.key]);
    if (read.fault !== null) faults.push(read.fault);
    else if (read.value !== null) numbers[input.key] = read.value;
  }
  if (faults.length > 0) throw inputFaults(calculation, faults);
  return { name, inputs: numbers, outputs: calculation.compute(numbers), source: calculation.source };
}

function calculationNamed(name: string): Calculation {
  const found = calculations.find((calculation) => calculation.name === name);
  if (found !== undefined) return found;
  const near = nearNames(name);
  const hint =
    near.length === 0
      ? `There are: ${calculations.map((one) => one.name).join(', ')}`
      : `Did you mean ${near.join(', ')}`;
  throw new InputError('reckon/unknown', `There is no calculation "${name}". ${hint}.`, { name, near });
}

/** Names that share a word with what was asked, or a beginning of three letters. */
function nearNames(name: string): readonly string[] {
  const words = name
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word.length > 2);
  const isNear = (part: string) => words.some((word) => part.startsWith(word.slice(0, 3)));
  return calculations.map((calculation) => calculation.name).filter((candidate) => candidate.split('-').some(isNear));
}

interface ReadInput {
  readonly value: number | null;
  readonly fault: string | null;
}

function readInput(input: CalculationInput, raw: string | number | undefined): ReadInput {
  const unit = input.unit === '' || input.unit === 'any' ? '' : ` in ${input.unit}`;
  if (raw === undefined || raw === '') {
    return { value: null, fault: input.required ? `${input.key} is missing (${input.meaning}${unit})` : null };
  }
  const value = typeof raw === 'number' ? raw : readNumber(raw);
  if (value === null || !Number.isFinite(value)) {
    return { value: null, fault: `${input.key} must be a number${unit}, not "${raw}"` };
  }
  if (input.choices !== undefined && !input.choices.includes(value)) {
    return { value: null, fault: `${input.key} must be one of ${input.choices.join(', ')}, not ${value}` };
  }
  const isBelow = input.minimum !== undefined && (input.mayBeMinimum ? value < input.minimum : value <= input.minimum);
  const bound = `${input.mayBeMinimum ? 'at least' : 'above'} ${input.minimum}`;
  return isBelow
    ? { value: null, fault: `${input.key} must be ${bound}${unit}, not ${value}` }
    : { value, fault: null };
}

/** A number with a decimal point or comma; null for anything else, also where both or several signs are there. */
function readNumber(text: string): number | null {
  const plain = text.trim();
  return /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain.replace(',', '.')) : null;
}

function inputFaults(calculation: Calculation, faults: readonly string[]): InputError {
  const known = calculation.inputs.map(({ key, required }) => (required ? key : `[${key}]`)).join(', ');
  return new InputError('reckon/inputs', `${calculation.name}: ${faults.join('; ')}. Its inputs are ${known}.`, {
    name: calculation.name,
    faults,
  });
}
