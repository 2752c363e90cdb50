import { InputError } from '../errors.ts';
import type { Calculation, CalculationResult } from './calculation.ts';
import { conformityCalculations } from './conformity-calculations.ts';
import { decisionCalculations } from './decision-calculations.ts';
import { gradeCalculations } from './grade-calculations.ts';
import { type InputFault, readInputs } from './input-reading.ts';
import { lengthCalculations } from './length-calculations.ts';
import { planningCalculations } from './planning-calculations.ts';
import { strengthCalculations } from './strength-calculations.ts';
import { uncertaintyCalculations } from './uncertainty-calculations.ts';
import { unitCalculations } from './unit-calculations.ts';

/** Calculations of one subject of the trade. */
export interface CalculationGroup {
  readonly subject: string;
  readonly calculations: readonly Calculation[];
}

/** Every single calculation there is, by subject. */
export const calculationGroups: readonly CalculationGroup[] = [
  { subject: 'Grade, stress and force', calculations: gradeCalculations },
  { subject: 'Lengths, elongation and mass', calculations: lengthCalculations },
  { subject: 'Steel, size and energy', calculations: strengthCalculations },
  { subject: 'Rig and guard band', calculations: decisionCalculations },
  { subject: 'Chance and risk of a verdict', calculations: conformityCalculations },
  { subject: 'Uncertainty', calculations: uncertaintyCalculations },
  { subject: 'How many pieces, which rig', calculations: planningCalculations },
  { subject: 'Units and rounding', calculations: unitCalculations },
];

/** The same in one list, in the order in which they are listed. */
export const calculations: readonly Calculation[] = calculationGroups.flatMap((group) => group.calculations);

/** A calculation that was run: what it took, what it gave, and on what it rests. */
export interface Reckoning {
  readonly name: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly outputs: CalculationResult;
  readonly source: string;
  /** What to doubt about the result for these inputs. */
  readonly doubts: readonly string[];
}

/**
 * Runs one calculation by its name. Inputs may be numbers or text with a decimal point or comma.
 *
 * @throws InputError `reckon/unknown` (naming the nearest ones), `reckon/inputs` (every fault of the inputs at once:
 *   unknown, missing, not a number, out of range), or the calculation's own
 */
export function reckon(name: string, inputs: Readonly<Record<string, string | number>>): Reckoning {
  const calculation = calculationNamed(name);
  const { numbers, faults } = readInputs(calculation, inputs);
  if (faults.length > 0) throw inputFaults(calculation, faults);
  return {
    name,
    inputs: numbers,
    outputs: calculation.compute(numbers),
    source: calculation.source,
    doubts: calculation.doubts?.(numbers) ?? [],
  };
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

function inputFaults(calculation: Calculation, found: readonly InputFault[]): InputError {
  const faults = found.map(({ key, words }) => `${key} ${words}`);
  const known = calculation.inputs.map(({ key, required }) => (required ? key : `[${key}]`)).join(', ');
  return new InputError('reckon/inputs', `${calculation.name}: ${faults.join('; ')}. Its inputs are ${known}.`, {
    name: calculation.name,
    faults,
  });
}
