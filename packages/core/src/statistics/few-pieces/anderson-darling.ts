import { normalLogCdf } from '../distribution/index.ts';
import { summarise } from '../summary.ts';
import { normalitySentence, smallSampleDoubts } from './normality-sentence.ts';

/** The Anderson-Darling statistic of values sorted upwards, from ln F and ln (1 - F) at each. */
export function andersonDarlingStatistic(
  sorted: readonly number[],
  { logCdf, logUpper }: { readonly logCdf: (x: number) => number; readonly logUpper: (x: number) => number },
): number {
  const n = sorted.length;
  let sum = 0;
  sorted.forEach((x, index) => {
    sum += (2 * index + 1) * (logCdf(x) + logUpper(sorted[n - 1 - index] ?? x));
  });
  return -n - sum / n;
}

export interface NormalityTest {
  readonly n: number;
  /** A squared, or W. */
  readonly statistic: number | null;
  /** A squared adjusted for small n; null for tests that have no such form. */
  readonly adjusted: number | null;
  readonly p: number | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

const method =
  'Anderson-Darling test of a normal form, mean and standard deviation estimated (Stephens, in D\u2019Agostino and Stephens, Goodness-of-fit techniques, 1986, Table 4.9)';

/**
 * Do the values contradict a normal form? The p-value is told from n = 8; below, only the statistic is.
 * Fewer than three values, or equal ones, give nulls and the reason.
 */
export function andersonDarlingNormal(values: readonly number[]): NormalityTest {
  const { n, mean, sd } = summarise(values);
  const obstacle = n < 3 ? 'Fewer than three values have no form to test.' : sd === 0 ? 'All values are equal.' : null;
  if (obstacle !== null || mean === null || sd === null) {
    const sentence = normalitySentence({ n, p: null, reason: obstacle ?? '' });
    return { n, statistic: null, adjusted: null, p: null, method, doubts: [obstacle ?? ''], sentence };
  }
  const standard = values.map((value) => (value - mean) / sd).sort((a, b) => a - b);
  const statistic = andersonDarlingStatistic(standard, { logCdf: normalLogCdf, logUpper: (z) => normalLogCdf(-z) });
  const adjusted = statistic * (1 + 0.75 / n + 2.25 / (n * n));
  const p = n < 8 ? null : probabilityOf(adjusted);
  const unfit = n < 8 ? ['The p-value of this test is told from eight values.'] : [];
  const sentence = normalitySentence({ n, p, reason: unfit[0] ?? '' });
  return { n, statistic, adjusted, p, method, doubts: [...unfit, ...smallSampleDoubts(n)], sentence };
}

/** The four exponentials of Stephens' Table 4.9; from 13 on the last would turn upwards and the probability is 0 to every digit of use. */
function probabilityOf(a: number): number {
  if (a >= 13) return 0;
  if (a >= 0.6) return Math.exp(1.2937 - 5.709 * a + 0.0186 * a * a);
  if (a >= 0.34) return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
  if (a >= 0.2) return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
  return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
}
