import { summarise } from '../summary.ts';

/** The pieces of one product, as single values or as their summary; any unit, all the same. */
export type FewValues =
  | { readonly values: readonly number[] }
  | { readonly n: number; readonly mean: number; readonly sd: number | null };

/** What is known of a few pieces, and what keeps an inference from their scatter. */
export interface Sample {
  readonly n: number;
  readonly mean: number | null;
  readonly sd: number | null;
  /** Why nothing follows from the scatter; null where something does. */
  readonly obstacle: string | null;
}

/** Reads `few`; not finite values, a negative sd or an n that is no whole number are misuse and throw a RangeError. */
export function sampleOf(few: FewValues): Sample {
  const { n, mean, sd } = 'values' in few ? summarise(few.values) : given(few);
  return { n, mean, sd, obstacle: obstacleOf(n, sd) };
}

function given(few: { readonly n: number; readonly mean: number; readonly sd: number | null }) {
  requireCount(few.n);
  if (few.n > 0 && !Number.isFinite(few.mean))
    throw new RangeError(`the mean must be a finite number, not ${few.mean}`);
  if (few.sd !== null && !(few.sd >= 0 && few.sd < Infinity)) {
    throw new RangeError(`a standard deviation is a finite number of 0 or more, not ${few.sd}`);
  }
  return { n: few.n, mean: few.n === 0 ? null : few.mean, sd: few.n < 2 ? null : few.sd };
}

function obstacleOf(n: number, sd: number | null): string | null {
  if (n === 0) return 'There is no value.';
  if (n === 1) return 'One value has no scatter to judge by.';
  if (sd === null) return 'The standard deviation is not given.';
  if (sd === 0) return 'All values are equal: the scatter is finer than the readings resolve.';
  return null;
}

/** Refuses a number of pieces that is not whole or lies below 0. */
export function requireCount(n: number): void {
  if (!Number.isInteger(n) || n < 0)
    throw new RangeError(`the number of pieces is a whole number of 0 or more, not ${n}`);
}

/** Refuses a coverage, confidence or significance that does not lie between 0 and 1. */
export function requireShare(name: string, share: number): void {
  if (!(share > 0 && share < 1)) throw new RangeError(`${name} lies between 0 and 1, not ${share}`);
}

/** What every inference from a normal form owes its reader when the pieces are few. */
export function fewnessDoubts(n: number): readonly string[] {
  if (n >= 10) return [];
  return [`The normal form is assumed: ${n === 1 ? 'one value' : `${n} values`} cannot test it.`];
}
