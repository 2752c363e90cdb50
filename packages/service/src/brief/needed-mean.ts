import { type ConformityQuestion, powerToShowConformity } from '@provinghouse/core';

/** A mean a hundred times the limit is as good as one without end: the margin in standard deviations no longer grows. */
const farthest = 100;

/**
 * Least mean above a lower limit with which `n` pieces show the requirement with a chance of `power`, its scatter staying the same share of
 * it; null where no mean does. The chance rises with the mean, so halving finds it.
 */
export function meanThatShows(n: number, question: ConformityQuestion, power: number): number | null {
  const { limit, guard = 0 } = question;
  const isShown = (expectedMean: number) => (powerToShowConformity(n, { ...question, expectedMean }) ?? 0) >= power;
  let no = limit + guard;
  let yes = farthest * no;
  if (!isShown(yes)) return null;
  while (yes - no > 1e-9 * no) {
    const middle = (no + yes) / 2;
    if (isShown(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
