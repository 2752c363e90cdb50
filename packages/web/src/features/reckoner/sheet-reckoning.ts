import {
  type Calculation,
  type CalculationInput,
  isInputError,
  type OwnStandard,
  type Reckoning,
  readInputs,
  reckon,
} from '@provinghouse/core';
import { unitSign } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { type ChainValues, chainValues } from './chain-values.ts';
import { calculationOf, type EntryLink, linkOf, type Sheet, type Step } from './sheet.ts';

/** One field with what stands in it. */
export interface Field {
  readonly input: CalculationInput;
  /** What was typed, or the number that the link brings. */
  readonly shown: string;
  readonly link: EntryLink | null;
  readonly fault: string | null;
}

/** A calculation of the sheet, reckoned as far as its fields allow. */
export interface StepReckoning {
  /** From 1 on. */
  readonly number: number;
  readonly name: string;
  /** Null where there is no such calculation. */
  readonly calculation: Calculation | null;
  readonly fields: readonly Field[];
  readonly reckoning: Reckoning | null;
  readonly missing: readonly CalculationInput[];
  /** What is the matter with the fields together. */
  readonly fault: string | null;
}

export interface SheetReckoning {
  readonly chain: ChainValues | null;
  readonly steps: readonly StepReckoning[];
}

/** Reckons a sheet from top to bottom: a field may take what the chain at hand or an earlier calculation gives. */
export function reckonSheet({ chain, steps }: Sheet, own: readonly OwnStandard[] = []): SheetReckoning {
  const found = chain === null ? null : chainValues(chain, own);
  const done: StepReckoning[] = [];
  for (const step of steps) done.push(reckonStep(step, { chain: found, before: done }));
  return { chain: found, steps: done };
}

interface Above {
  readonly chain: ChainValues | null;
  readonly before: readonly StepReckoning[];
}

function reckonStep(step: Step, above: Above): StepReckoning {
  const calculation = calculationOf(step.calculation);
  const head = { number: above.before.length + 1, name: step.calculation, calculation };
  if (calculation === null) return { ...head, fields: [], reckoning: null, missing: [], fault: null };
  const entries = calculation.inputs.map((input) => entryOf(input, step, above));
  const raw = Object.fromEntries(entries.map(({ input, shown }) => [input.key, shown.trim()]));
  const { faults, numbers } = readInputs(calculation, raw);
  const fields = entries.map((entry): Field => {
    const fault = faults.find(({ key, kind }) => key === entry.input.key && kind !== 'missing');
    return { ...entry, fault: entry.fault ?? (fault === undefined ? null : withSign(fault.words, entry.input)) };
  });
  const missing = calculation.inputs.filter(({ key }) =>
    faults.some((fault) => fault.key === key && fault.kind === 'missing'),
  );
  const isReady = faults.length === 0 && Object.keys(numbers).length > 0 && fields.every(({ fault }) => fault === null);
  if (!isReady) return { ...head, fields, reckoning: null, missing, fault: null };
  return { ...head, missing, ...attempt(calculation, numbers, fields) };
}

/** The unit as printed: `must be a number in mm²`. */
function withSign(words: string, { unit }: CalculationInput): string {
  return unit === '' ? words : words.replace(` in ${unit}`, ` in ${unitSign(unit)}`);
}

function entryOf(input: CalculationInput, step: Step, above: Above): Field {
  const entry = step.entries[input.key] ?? '';
  const link = linkOf(entry);
  if (link === null) return { input, shown: entry, link, fault: null };
  const value = valueAt(link, above);
  if (value !== null) return { input, shown: value, link, fault: null };
  // A chain without, say, an upper limit leaves a field that may be blank blank.
  if (link.step === 0 && !input.required && above.chain?.specification) return { input, shown: '', link, fault: null };
  const isThere = link.step === 0 ? above.chain !== null : link.step <= above.before.length;
  return { input, shown: '', link, fault: isThere ? text.reckoner.noValueYet(link.step) : text.reckoner.brokenLink };
}

/** The number a link brings as text; null where there is none yet, or none at all. */
function valueAt({ step, key, side }: EntryLink, { chain, before }: Above): string | null {
  if (step === 0) return plain(chain?.values[key]);
  const from = before[step - 1];
  if (from === undefined) return null;
  if (side === 'result') return plain(from.reckoning?.outputs[key]);
  const field = from.fields.find(({ input }) => input.key === key);
  return field === undefined || field.fault !== null || field.shown.trim() === '' ? null : field.shown;
}

function plain(value: number | string | null | undefined): string | null {
  return typeof value === 'number' && Number.isFinite(value) ? String(value) : null;
}

/** A fault that names one key stands at its field; any other at the calculation. */
function attempt(
  calculation: Calculation,
  numbers: Readonly<Record<string, number>>,
  fields: readonly Field[],
): Pick<StepReckoning, 'fields' | 'reckoning' | 'fault'> {
  try {
    return { fields, reckoning: reckon(calculation.name, numbers), fault: null };
  } catch (error) {
    if (!isInputError(error) && !(error instanceof RangeError)) throw error;
    const words = isInputError(error) ? error.message : text.reckoner.cannot(error.message);
    const key = isInputError(error) ? error.context.key : null;
    if (!fields.some(({ input }) => input.key === key)) return { fields, reckoning: null, fault: words };
    const placed = fields.map((field) => (field.input.key === key ? { ...field, fault: words } : field));
    return { fields: placed, reckoning: null, fault: null };
  }
}
