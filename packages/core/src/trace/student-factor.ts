/**
 * Student's factor for a two-sided 95 % interval with `freedom` degrees of freedom (not below 2 taken), by the Cornish-Fisher
 * expansion about the normal quantile: Abramowitz and Stegun, 26.7.5. Better than 0.1 % from 5 degrees of freedom on.
 */
export function studentFactor95(freedom: number): number {
  const z = 1.959963984540054;
  const v = Math.max(2, freedom);
  const g1 = (z ** 3 + z) / 4;
  const g2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const g3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  const g4 = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160;
  return z + g1 / v + g2 / v ** 2 + g3 / v ** 3 + g4 / v ** 4;
}
