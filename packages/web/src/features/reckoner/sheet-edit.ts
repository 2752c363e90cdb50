import { type Calculation, meaningOf } from '@provinghouse/core';
import {
  type ChainAtHand,
  calculationOf,
  type EntryLink,
  linkOf,
  linkText,
  longestSheet,
  type Sheet,
  type Step,
} from './sheet.ts';
import type { SheetReckoning, StepReckoning } from './sheet-reckoning.ts';

/** What was typed on this visit, by the meaning of the field. */
export type Remembered = ReadonlyMap<string, string>;

/** The sheet with one entry typed, of the step of this number. */
export function withEntry(sheet: Sheet, at: { readonly step: number; readonly key: string }, entry: string): Sheet {
  return {
    ...sheet,
    steps: sheet.steps.map((step, index) =>
      index + 1 === at.step ? { ...step, entries: { ...step.entries, [at.key]: entry } } : step,
    ),
  };
}

/** The sheet with all entries of a step exchanged. */
export function withEntries(sheet: Sheet, number: number, entries: Step['entries']): Sheet {
  return { ...sheet, steps: sheet.steps.map((step, index) => (index + 1 === number ? { ...step, entries } : step)) };
}

/** A calculation alone on the sheet. Fields that mean the same keep what stood in them, here or earlier on this visit. */
export function openedAlone(name: string, from: SheetReckoning, sheet: Sheet, remembered: Remembered): Sheet {
  const calculation = calculationOf(name);
  if (calculation === null) return { ...sheet, steps: [{ calculation: name, entries: {} }] };
  const entries = entriesFor(calculation, (meaning) => {
    const standing = standingValue(meaning, from);
    if (standing !== null) return standing;
    return meaning in (from.chain?.values ?? {}) ? chainLink(meaning) : (remembered.get(meaning) ?? null);
  });
  return { ...sheet, steps: [{ calculation: name, entries }] };
}

/** A calculation below what is there, its fields linked to those above that mean the same; null where the sheet is full. */
export function addedBelow(name: string, from: SheetReckoning, sheet: Sheet): Sheet | null {
  const calculation = calculationOf(name);
  if (calculation === null || sheet.steps.length >= longestSheet) return null;
  const entries = entriesFor(calculation, (meaning) => {
    const link = nearestAbove(meaning, from.steps);
    if (link !== null) return linkText(link);
    return meaning in (from.chain?.values ?? {}) ? chainLink(meaning) : null;
  });
  return { ...sheet, steps: [...sheet.steps, { calculation: name, entries }] };
}

/** A result sent into a field: of the calculation where it stands further down, else of a new one below; null where the sheet is full. */
export function sent(
  result: { readonly step: number; readonly key: string },
  to: { readonly calculation: string; readonly key: string },
  from: SheetReckoning,
  sheet: Sheet,
): { readonly sheet: Sheet; readonly step: number } | null {
  const link = linkText({ ...result, side: 'result' });
  const below = sheet.steps.findIndex(
    ({ calculation }, index) => index + 1 > result.step && calculation === to.calculation,
  );
  const wider = below >= 0 ? sheet : addedBelow(to.calculation, from, sheet);
  if (wider === null) return null;
  const step = below >= 0 ? below + 1 : wider.steps.length;
  return { sheet: withEntry(wider, { step, key: to.key }, link), step };
}

/** The sheet without one step: what was linked to it keeps the number it had. */
export function withoutStep(sheet: Sheet, number: number, from: SheetReckoning): Sheet {
  const steps = sheet.steps.flatMap((step, index) => {
    if (index + 1 === number) return [];
    const reckoned = from.steps[index];
    return [relinked(step, reckoned, (at) => (at === number ? null : at > number ? at - 1 : at))];
  });
  return { ...sheet, steps };
}

/** The sheet with no chain at hand: what it filled keeps the number it had. */
export function withoutChain(sheet: Sheet, from: SheetReckoning): Sheet {
  const steps = sheet.steps.map((step, index) => relinked(step, from.steps[index], (at) => (at === 0 ? null : at)));
  return { chain: null, steps };
}

/** The sheet with another chain at hand; blank fields take what it gives, by the meaning of the field. */
export function withChain(sheet: Sheet, chain: ChainAtHand, values: Readonly<Record<string, number>>): Sheet {
  const steps = sheet.steps.map((step) => {
    const calculation = calculationOf(step.calculation);
    if (calculation === null) return step;
    const given = entriesFor(calculation, (meaning) => (meaning in values ? chainLink(meaning) : null));
    const typed = Object.entries(step.entries).filter(([, entry]) => entry.trim() !== '');
    return { ...step, entries: { ...given, ...Object.fromEntries(typed) } };
  });
  return { chain, steps };
}

function entriesFor(calculation: Calculation, entryOf: (meaning: string) => string | null): Record<string, string> {
  return Object.fromEntries(
    calculation.inputs.flatMap(({ key }) => {
      const value = entryOf(meaningOf(calculation.name, key, 'input'));
      return value === null ? [] : [[key, value]];
    }),
  );
}

function chainLink(meaning: string): string {
  return linkText({ step: 0, key: meaning, side: 'input' });
}

/** What a field of this meaning holds on the sheet: a link to the chain as it is, any other as its number. */
function standingValue(meaning: string, { steps }: SheetReckoning): string | null {
  for (const step of steps.toReversed()) {
    const result = resultOf(meaning, step);
    if (result !== null) return String(result.value);
    const field = fieldOf(meaning, step);
    if (field === undefined) continue;
    return field.link?.step === 0 ? linkText(field.link) : field.shown;
  }
  return null;
}

/** The nearest result or filled field of a meaning; a field that is linked itself is followed to where its number stands. */
function nearestAbove(meaning: string, steps: readonly StepReckoning[]): EntryLink | null {
  for (const step of steps.toReversed()) {
    const result = resultOf(meaning, step);
    if (result !== null) return { step: step.number, key: result.key, side: 'result' };
    const field = fieldOf(meaning, step);
    if (field !== undefined) return field.link ?? { step: step.number, key: field.input.key, side: 'input' };
  }
  return null;
}

function resultOf(meaning: string, { name, reckoning }: StepReckoning): { key: string; value: number } | null {
  for (const [key, value] of Object.entries(reckoning?.outputs ?? {})) {
    if (typeof value === 'number' && meaningOf(name, key, 'result') === meaning) return { key, value };
  }
  return null;
}

function fieldOf(meaning: string, { name, fields }: StepReckoning) {
  return fields.find(
    ({ input, shown, fault }) =>
      fault === null && shown.trim() !== '' && meaningOf(name, input.key, 'input') === meaning,
  );
}

/** Links moved by `to`; those that lead nowhere any more become the number they brought. */
function relinked(step: Step, reckoned: StepReckoning | undefined, to: (at: number) => number | null): Step {
  const entries = Object.entries(step.entries).map(([key, entry]) => {
    const link = linkOf(entry);
    if (link === null) return [key, entry] as const;
    const at = to(link.step);
    if (at !== null) return [key, linkText({ ...link, step: at })] as const;
    return [key, reckoned?.fields.find(({ input }) => input.key === key)?.shown ?? ''] as const;
  });
  return { ...step, entries: Object.fromEntries(entries) };
}
