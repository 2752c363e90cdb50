import { studentQuantile, studentUpper } from '../distribution/index.ts';
import { summarise } from '../summary.ts';
import { plainNumber, plainPercent, plainPieces } from './plain-number.ts';
import { requireShare } from './sample.ts';

/** Which end is suspected before the values are seen: 'either' is the two-sided test. */
export type SuspectEnd = 'either' | 'greatest' | 'least';

export interface GrubbsTest {
  readonly n: number;
  readonly end: SuspectEnd;
  readonly significance: number;
  readonly mean: number | null;
  readonly sd: number | null;
  /** Place of the suspect in the list given, and its value. */
  readonly index: number | null;
  readonly value: number | null;
  readonly statistic: number | null;
  readonly critical: number | null;
  /** Bound on the probability of so far a value among normal ones (Bonferroni; exact where it is small). */
  readonly p: number | null;
  /** Stands out; it is shown, never left out. Null where the test cannot be made. */
  readonly standsOut: boolean | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method = "Grubbs' test for one outlier (ISO 5725-2; NIST/SEMATECH e-Handbook 1.3.5.17.1)";

/** The critical value of Grubbs' statistic for n of 3 or more; `end` 'either' is the two-sided one. */
export function grubbsCritical(
  n: number,
  { significance, end }: { readonly significance: number; readonly end: SuspectEnd },
): number {
  requireShare('the significance', significance);
  if (!Number.isInteger(n) || n < 3) throw new RangeError(`Grubbs' test takes a whole n of 3 or more, not ${n}`);
  const t = studentQuantile(significance / (end === 'either' ? 2 * n : n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * Does the value farthest from the mean stand out from normal scatter? Nothing is dropped: the result only points to it.
 * Below three values, or where all are equal, the answer is null with the reason.
 */
export function grubbsTest(
  values: readonly number[],
  options: { readonly significance: number; readonly end: SuspectEnd; readonly unit?: string },
): GrubbsTest {
  const { significance, end, unit } = options;
  requireShare('the significance', significance);
  const { n, mean, sd } = summarise(values);
  const common = { n, end, significance, mean, sd, method };
  const obstacle =
    n < 3 ? 'Fewer than three values cannot show an outlier.' : sd === 0 ? 'All values are equal.' : null;
  if (obstacle !== null || mean === null || sd === null) {
    const none = { index: null, value: null, statistic: null, critical: null, p: null, standsOut: null };
    return {
      ...common,
      ...none,
      doubts: [obstacle ?? ''],
      sentence: `No test for an outlier can be made. ${obstacle ?? ''}`,
    };
  }
  const index = suspectIndex(values, mean, end);
  const value = values[index] ?? mean;
  const statistic = Math.abs(value - mean) / sd;
  const critical = grubbsCritical(n, { significance, end });
  const standsOut = statistic > critical;
  const p = Math.min(1, (end === 'either' ? 2 * n : n) * oneTail(statistic, n));
  const verb = standsOut ? 'stands out from' : 'is within';
  const kept = standsOut ? ' It is kept: look for the cause.' : '';
  const sentence = `The value ${plainNumber(value, unit)} ${verb} the scatter of ${plainPieces(n)} (at ${plainPercent(significance)} risk of a false alarm).${kept}`;
  return { ...common, index, value, statistic, critical, p, standsOut, doubts: doubtsOf(n), sentence };
}

function suspectIndex(values: readonly number[], mean: number, end: SuspectEnd): number {
  const distance = (value: number) =>
    end === 'either' ? Math.abs(value - mean) : end === 'greatest' ? value - mean : mean - value;
  return values.reduce((best, value, index) => (distance(value) > distance(values[best] ?? mean) ? index : best), 0);
}

/** P(T > t) for the t that belongs to the statistic. */
function oneTail(statistic: number, n: number): number {
  const room = (n - 1) ** 2 - n * statistic ** 2;
  if (room <= 0) return 0;
  return studentUpper(Math.sqrt((n * (n - 2) * statistic ** 2) / room), n - 2);
}

function doubtsOf(n: number): readonly string[] {
  const masking = 'Two outliers can hide each other from this test.';
  return n < 6 ? [`With ${n} values only a gross outlier can be seen.`, masking] : [masking];
}
