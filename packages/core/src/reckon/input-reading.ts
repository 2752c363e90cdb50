import type { Calculation, CalculationInput } from './calculation.ts';

/** What is the matter with one input of a calculation. */
export interface InputFault {
  readonly key: string;
  readonly kind: 'not an input' | 'missing' | 'not a number' | 'not a choice' | 'out of range';
  /** To be read after the key or the meaning: `must be above 0 in mm, not -8`. */
  readonly words: string;
}

export interface InputReading {
  /** The inputs that could be read, by key. */
  readonly numbers: Readonly<Record<string, number>>;
  readonly faults: readonly InputFault[];
}

/**
 * Reads the inputs of a calculation, given as numbers or as text with a decimal point or comma, and tells every fault at once. An empty
 * text is an input left out.
 */
export function readInputs(
  calculation: Calculation,
  raw: Readonly<Record<string, string | number | undefined>>,
): InputReading {
  const faults: InputFault[] = [];
  const numbers: Record<string, number> = {};
  for (const key of Object.keys(raw)) {
    if (!calculation.inputs.some((input) => input.key === key))
      faults.push({ key, kind: 'not an input', words: 'is not an input' });
  }
  for (const input of calculation.inputs) {
    const read = readInput(input, raw[input.key]);
    if (read === null) continue;
    if (typeof read === 'number') numbers[input.key] = read;
    else faults.push({ key: input.key, ...read });
  }
  return { numbers, faults };
}

/**
 * A number with a decimal point or comma; null for anything else, also where both or several signs are there: whether a comma parts
 * thousands or decimals is not guessed.
 */
export function readNumber(text: string): number | null {
  const plain = text.trim();
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** The value, what is the matter with it, or null where an input that may be left out is. */
function readInput(input: CalculationInput, raw: string | number | undefined): number | Omit<InputFault, 'key'> | null {
  const unit = input.unit === '' || input.unit === 'any' ? '' : ` in ${input.unit}`;
  if (raw === undefined || raw === '') {
    return input.required ? { kind: 'missing', words: `is missing (${input.meaning}${unit})` } : null;
  }
  const value = typeof raw === 'number' ? raw : readNumber(raw);
  if (value === null || !Number.isFinite(value)) {
    return { kind: 'not a number', words: `must be a number${unit}, not "${raw}"` };
  }
  if (input.choices !== undefined && !input.choices.includes(value)) {
    return { kind: 'not a choice', words: `must be one of ${input.choices.join(', ')}, not ${value}` };
  }
  const isBelow = input.minimum !== undefined && (input.mayBeMinimum ? value < input.minimum : value <= input.minimum);
  if (!isBelow) return value;
  const bound = `${input.mayBeMinimum ? 'at least' : 'above'} ${input.minimum}`;
  return { kind: 'out of range', words: `must be ${bound}${unit}, not ${value}` };
}
