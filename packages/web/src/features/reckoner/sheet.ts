import { type Calculation, calculations, type Quantity, quantityNames } from '@provinghouse/core';

/** A calculation on the sheet with what was typed, by key; an entry that begins with `~` takes its value from elsewhere. */
export interface Step {
  readonly calculation: string;
  readonly entries: Readonly<Record<string, string>>;
}

/** The chain that fills fields: its key in the rulebook, and the quantity whose limits are in question. */
export interface ChainAtHand {
  readonly key: string;
  readonly requirement: Quantity;
}

/** What is on the sheet, top to bottom. */
export interface Sheet {
  readonly chain: ChainAtHand | null;
  readonly steps: readonly Step[];
}

/** Where an entry takes its value from: step 0 is the chain at hand, 1 the first calculation. */
export interface EntryLink {
  readonly step: number;
  readonly key: string;
  readonly side: 'input' | 'result';
}

/** More would make neither a sheet nor an address that anybody reads. */
export const longestSheet = 12;

export const emptySheet: Sheet = { chain: null, steps: [] };

/** `~1.size_mm` for an entry of the first calculation, `~1!area_mm2` for a result of it. */
export function linkText({ step, key, side }: EntryLink): string {
  return `~${step}${side === 'input' ? '.' : '!'}${key}`;
}

/** The link of an entry; null where it was typed. */
export function linkOf(entry: string): EntryLink | null {
  const parts = /^~(\d+)([.!])(\w+)$/.exec(entry);
  if (parts === null) return null;
  const [, step = '', mark, key = ''] = parts;
  return { step: Number(step), key, side: mark === '!' ? 'result' : 'input' };
}

export function calculationOf(name: string): Calculation | null {
  return calculations.find((calculation) => calculation.name === name) ?? null;
}

export function isQuantity(text: string): text is Quantity {
  return Object.hasOwn(quantityNames, text);
}
