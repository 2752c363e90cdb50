import { quantityNames } from '../chain/specification.ts';
import type { ExpectedInterval } from './expected-interval.ts';
import type { GaugingQuantity } from './reading.ts';

/** A quantity as it is called at the bench: `pitch`, `weld diameter`. */
export function quantityWord(quantity: GaugingQuantity, overLinks: number | null = null): string {
  if (quantity === 'lengthOverLinks') return `length over ${overLinks ?? 'the'} links (sum of pitches)`;
  return quantityNames[quantity].replace(/ \(.*\)$/, '');
}

/** `the pitch expected here (23.28 to 24.72 mm)`. */
export function spanWords(expected: ExpectedInterval, overLinks: number | null = null): string {
  return `the ${quantityWord(expected.quantity, overLinks)} expected here (${shown(expected.lower_mm)} to ${shown(expected.upper_mm)} mm)`;
}

/** A length to four significant figures, two decimals at least kept below 100 mm. */
export function shown(value_mm: number): string {
  return `${Number(value_mm.toFixed(value_mm < 100 ? 2 : 1))}`;
}

/** On which side of a limit a value is; null inside, on the limit, or where that side is open. */
export function isOutside(
  value: number,
  limit: { readonly lower: number | null; readonly upper: number | null },
): 'below' | 'above' | null {
  // A value that stands on the limit in decimal may miss it by the last binary digit.
  const slack = 1e-9 * Math.abs(value);
  if (limit.lower !== null && value < limit.lower - slack) return 'below';
  if (limit.upper !== null && value > limit.upper + slack) return 'above';
  return null;
}
