/**
 * Preferred numbers of ISO 3 (one decade each; multiply by powers of ten). Chain standards print 3.15 as 3.2 and 31.5
 * as 32; the series here keep the exact members. Source: memory of ISO 3, as the rulebook's `general.preferredNumbers`.
 */
export const preferredNumbers = {
  R10: [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8],
  R20: [1, 1.12, 1.25, 1.4, 1.6, 1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9],
  R40: [
    1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15, 3.35,
    3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
  ],
} as const;

/** A member computed by a formula may come out a rounding error beside itself; it still counts as that member. */
const hair = 1e-9;

/** The largest R40 number not above `value`. NaN for a value that is not a finite number above zero. */
export function roundDownR40(value: number): number {
  const below = membersAround(value, preferredNumbers.R40).filter((member) => member <= value * (1 + hair));
  return below.at(-1) ?? Number.NaN;
}

/** The smallest R20 number not below `value`. NaN for a value that is not a finite number above zero. */
export function roundUpR20(value: number): number {
  return membersAround(value, preferredNumbers.R20).find((member) => member >= value * (1 - hair)) ?? Number.NaN;
}

/** The R10 number with the smallest difference to `value`; the lower one on a tie. NaN for a value that is not finite and above zero. */
export function nearestR10(value: number): number {
  let nearest = Number.NaN;
  for (const member of membersAround(value, preferredNumbers.R10)) {
    if (Number.isNaN(nearest) || Math.abs(member - value) < Math.abs(nearest - value)) nearest = member;
  }
  return nearest;
}

/** `value` to three significant figures, as chain tables print forces. */
export function toPrecision3(value: number): number {
  return Number(value.toPrecision(3));
}

/** Members of the series from the decade of `value` and its two neighbours, ascending. */
function membersAround(value: number, series: readonly number[]): readonly number[] {
  if (!Number.isFinite(value) || value <= 0) return [];
  const decade = Math.floor(Math.log10(value));
  return [decade - 1, decade, decade + 1].flatMap((power) =>
    series.map((member) => Number((member * 10 ** power).toPrecision(6))),
  );
}
