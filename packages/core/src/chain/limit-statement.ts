import { type Quantity, quantityNames, quantityUnits } from './specification.ts';

/** The numbers of a requirement; null on an open side. */
export interface LimitNumbers {
  readonly lower: number | null;
  readonly upper: number | null;
  readonly nominal: number | null;
  readonly links: number | null;
}

/** The requirement in words: `breaking force at least 40.2 kN`. Numbers are shown to six significant figures. */
export function limitStatement(quantity: Quantity, numbers: LimitNumbers): string {
  const { lower, upper, nominal, links } = numbers;
  const unit = quantityUnits[quantity];
  const name = links === null ? quantityNames[quantity] : `length over ${links} links (sum of pitches)`;
  const shown = (value: number) => `${Number(value.toPrecision(6))}`;
  if (lower !== null && upper !== null) return `${name} ${shown(lower)} to ${shown(upper)} ${unit}`;
  if (lower !== null) return `${name} at least ${shown(lower)} ${unit}`;
  if (upper !== null) return `${name} at most ${shown(upper)} ${unit}`;
  return nominal === null ? name : `${name} nominally ${shown(nominal)} ${unit}, without limits`;
}
