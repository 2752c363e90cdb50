/** An interval that holds a stated share of the values a Monte Carlo run drew. */
export interface CoverageInterval {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Probabilistically symmetric and shortest coverage intervals of values in ascending order (JCGM 101:2008 7.7). Null without values.
 *
 * @param probability of coverage, between 0 and 1
 */
export function coverageIntervals(
  ascending: Float64Array,
  probability: number,
): { readonly symmetric: CoverageInterval; readonly shortest: CoverageInterval } | null {
  const count = ascending.length;
  if (count === 0) return null;
  const held = Math.min(count - 1, Math.floor(probability * count + 0.5));
  const from = Math.floor((count - held) / 2);
  // The clause counts from 1 and takes r = int((M - q + 1) / 2).
  const start = Math.max(0, Number.isInteger((count - held) / 2) ? from - 1 : from);
  return {
    symmetric: between(ascending, start, held),
    shortest: between(ascending, shortestStart(ascending, held), held),
  };
}

function between(ascending: Float64Array, start: number, held: number): CoverageInterval {
  return { lower: ascending[start] ?? 0, upper: ascending[start + held] ?? 0 };
}

function shortestStart(ascending: Float64Array, held: number): number {
  let start = 0;
  let least = Infinity;
  for (let r = 0; r + held < ascending.length; r++) {
    const length = (ascending[r + held] as number) - (ascending[r] as number); // both inside, by the loop's bound
    if (length < least) {
      least = length;
      start = r;
    }
  }
  return start;
}
