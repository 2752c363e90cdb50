/** The measured values of one group (a product, a batch, a machine), all in one unit. */
export interface Group {
  readonly name: string;
  readonly values: readonly number[];
  /** Values known only as "at least" (grip break, stopped or clipped pull). They are counted and left out of means. */
  readonly atLeast?: readonly number[];
}

/** Count, mean and scatter of a group, the mean told as an offset from a centre common to all groups. */
export interface CentredGroup {
  readonly name: string;
  readonly n: number;
  /** mean - centre: keeps the digits that a mean near 1e12 would lose. */
  readonly offset: number;
  readonly sumOfSquares: number;
  /** sumOfSquares / (n - 1); null at n = 1, zero when all values are equal. */
  readonly variance: number | null;
}

export interface CentredGroups {
  readonly centre: number;
  readonly groups: readonly CentredGroup[];
  readonly n: number;
  /** Names of groups without a value, which no test can use. */
  readonly empty: readonly string[];
}

/** Two groups of the same name, and data that are not finite, are the caller's fault: RangeError. */
export function refuseMisuse(groups: readonly Group[]): void {
  const names = new Set(groups.map((group) => group.name));
  if (names.size !== groups.length) throw new RangeError('every group needs a name of its own');
  const finite = groups.every((group) => [...group.values, ...(group.atLeast ?? [])].every(Number.isFinite));
  if (!finite) throw new RangeError('a comparison takes finite numbers only');
}

/** Throws a RangeError unless 0 < confidence < 1. */
export function refuseConfidence(confidence: number): void {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('a confidence lies between 0 and 1');
}

/**
 * Moments of every group about one centre, the first value met: differences from it are exact for values that share
 * their leading digits (NIST StRD SmLs sets), and every later sum is of small numbers.
 */
export function centred(groups: readonly Group[]): CentredGroups {
  refuseMisuse(groups);
  const filled = groups.filter((group) => group.values.length > 0);
  const centre = filled[0]?.values[0] ?? 0;
  return {
    centre,
    groups: filled.map((group) => momentsAbout(centre, group)),
    n: filled.reduce((sum, group) => sum + group.values.length, 0),
    empty: groups.filter((group) => group.values.length === 0).map((group) => group.name),
  };
}

function momentsAbout(centre: number, { name, values }: Group): CentredGroup {
  const n = values.length;
  const shifted = values.map((value) => value - centre);
  const offset = meanOf(shifted);
  const raw = sumOfSquaresAbout(offset, shifted);
  const sumOfSquares = raw <= n * roundingOf(values) ** 2 ? 0 : raw;
  return { name, n, offset, sumOfSquares, variance: n < 2 ? null : sumOfSquares / (n - 1) };
}

/** The mean of the deviations from a first guess corrects that guess to the last digit. */
export function meanOf(values: readonly number[]): number {
  const guess = values.reduce((sum, value) => sum + value, 0) / values.length;
  return guess + values.reduce((sum, value) => sum + (value - guess), 0) / values.length;
}

function sumOfSquaresAbout(mean: number, values: readonly number[]): number {
  let squares = 0;
  let remainder = 0;
  for (const value of values) {
    squares += (value - mean) ** 2;
    remainder += value - mean;
  }
  return squares - remainder ** 2 / values.length;
}

/** What a difference may be by the rounding of doubles alone: scatter below it is none (0.1 + 0.2 beside 0.3). */
export function roundingOf(values: readonly number[]): number {
  return 4 * Number.EPSILON * values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
