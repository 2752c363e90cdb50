import { type Limit, quantityNames } from '@provinghouse/core';
import { absent, asWritten, besideUncertainty } from './number.ts';

/** The quantity in words, with the number of links where it is taken over several. */
export function quantityOf(limit: Limit): string {
  const name = quantityNames[limit.quantity];
  return limit.links === null ? name : `${name}, ${limit.links} links`;
}

/** `at least 30.2`, `at most 8.4`, `7.6 to 8.4`: the limit itself, as its source writes it. */
export function limitWords(limit: Pick<Limit, 'lower' | 'upper'>): string {
  return bounds(limit, asWritten);
}

/** The same for the acceptance limits, to the last place of the value's uncertainty. */
export function acceptanceWords(acceptance: Pick<Limit, 'lower' | 'upper'>, uncertainty: number | null): string {
  return bounds(acceptance, (value) => besideUncertainty(value, uncertainty));
}

function bounds(limit: Pick<Limit, 'lower' | 'upper'>, print: (value: number) => string): string {
  if (limit.lower !== null && limit.upper !== null) return `${print(limit.lower)} to ${print(limit.upper)}`;
  if (limit.lower !== null) return `at least ${print(limit.lower)}`;
  return limit.upper === null ? absent : `at most ${print(limit.upper)}`;
}
