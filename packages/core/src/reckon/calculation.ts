/** One input of a calculation. */
export interface CalculationInput {
  /** Name with its unit: `force_kN`. */
  readonly key: string;
  readonly unit: string;
  readonly meaning: string;
  readonly required: boolean;
  /** The value must not be below this; unless `mayBeMinimum`, it must be above it. */
  readonly minimum?: number;
  readonly mayBeMinimum?: boolean;
  /** The only values there are, where there are few. */
  readonly choices?: readonly number[];
}

/** One result of a calculation. */
export interface CalculationOutput {
  readonly key: string;
  readonly unit: string;
  readonly meaning: string;
}

export type CalculationResult = Readonly<Record<string, number | string | null>>;

/** A single calculation that stands on its own, with its units and source. */
export interface Calculation {
  readonly name: string;
  readonly title: string;
  readonly inputs: readonly CalculationInput[];
  readonly outputs: readonly CalculationOutput[];
  /** Standard, clause or book; `memory` is said where it is so. */
  readonly source: string;
  /** The formula in the letters of the trade, for a reader; the computation is `compute`. */
  readonly formula: string;
  /** What a reader should doubt about the result for these inputs, a sentence each; absent where there is nothing. */
  readonly doubts?: (inputs: Readonly<Record<string, number>>) => readonly string[];
  /** Values that work, for help texts and trials. */
  readonly example: Readonly<Record<string, number>>;
  /** Inputs have been checked: each required key is there, finite and in range. */
  readonly compute: (inputs: Readonly<Record<string, number>>) => CalculationResult;
}

/** A required input above zero. */
export function positive(key: string, unit: string, meaning: string): CalculationInput {
  return { key, unit, meaning, required: true, minimum: 0 };
}

/** An input above zero that may be left out. */
export function optional(key: string, unit: string, meaning: string): CalculationInput {
  return { key, unit, meaning, required: false, minimum: 0 };
}

/** The value of a required input; NaN cannot occur once the inputs are checked, and would show if it did. */
export function given(inputs: Readonly<Record<string, number>>, key: string): number {
  return inputs[key] ?? Number.NaN;
}
