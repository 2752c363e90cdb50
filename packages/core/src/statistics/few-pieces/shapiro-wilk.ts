import { normalQuantile, normalUpper } from '../distribution/index.ts';
import { summarise } from '../summary.ts';
import type { NormalityTest } from './anderson-darling.ts';
import { normalitySentence, smallSampleDoubts } from './normality-sentence.ts';

const method = 'Shapiro-Wilk test of a normal form (Royston, algorithm AS R94, Applied Statistics 44 (1995) 547-551)';

/** Do the values contradict a normal form? For 3 to 5000 values; others, and equal ones, give nulls and the reason. */
export function shapiroWilk(values: readonly number[]): NormalityTest {
  const { n, mean, least, greatest } = summarise(values);
  const obstacle = obstacleOf(n, least, greatest);
  if (obstacle !== null || mean === null) {
    const sentence = normalitySentence({ n, p: null, reason: obstacle ?? '' });
    return { n, statistic: null, adjusted: null, p: null, method, doubts: [obstacle ?? ''], sentence };
  }
  const complement = complementOfW(values, mean);
  const p = probabilityOf(complement, n);
  const sentence = normalitySentence({ n, p, reason: '' });
  return { n, statistic: 1 - complement, adjusted: null, p, method, doubts: smallSampleDoubts(n), sentence };
}

function obstacleOf(n: number, least: number | null, greatest: number | null): string | null {
  if (n < 3) return 'Fewer than three values have no form to test.';
  if (n > 5000) return 'The test is made for at most 5000 values.';
  return least === greatest ? 'All values are equal.' : null;
}

/** 1 - W, written as a product so that W near 1 keeps its digits. */
function complementOfW(values: readonly number[], mean: number): number {
  const n = values.length;
  const sorted = values.map((value) => value - mean).sort((a, b) => a - b);
  const half = weightsFor(n);
  let linear = 0;
  let weightSquares = 0;
  half.forEach((weight, index) => {
    linear += weight * ((sorted[n - 1 - index] ?? 0) - (sorted[index] ?? 0));
    weightSquares += 2 * weight * weight;
  });
  const squares = sorted.reduce((sum, value) => sum + value * value, 0);
  const root = Math.sqrt(weightSquares * squares);
  return Math.max(0, ((root - linear) * (root + linear)) / (root * root));
}

/** Weights of the differences greatest - least, second greatest - second least, ...; polynomials in 1 / root n, lowest power first. */
function weightsFor(n: number): readonly number[] {
  if (n === 3) return [Math.SQRT1_2];
  const count = Math.floor(n / 2);
  const scores = Array.from({ length: count }, (_, index) => -normalQuantile((index + 0.625) / (n + 0.25)));
  const squares = 2 * scores.reduce((sum, score) => sum + score * score, 0);
  const [first = 0, second = 0] = scores;
  const u = 1 / Math.sqrt(n);
  const outer = polynomial([0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056], u) + first / Math.sqrt(squares);
  if (n <= 5) {
    const scale = Math.sqrt((squares - 2 * first ** 2) / (1 - 2 * outer ** 2));
    return [outer, ...scores.slice(1).map((score) => score / scale)];
  }
  const next = polynomial([0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633], u) + second / Math.sqrt(squares);
  const scale = Math.sqrt((squares - 2 * first ** 2 - 2 * second ** 2) / (1 - 2 * outer ** 2 - 2 * next ** 2));
  return [outer, next, ...scores.slice(2).map((score) => score / scale)];
}

/** Royston's normalising transformation of ln(1 - W); exact for n = 3. */
function probabilityOf(complement: number, n: number): number {
  if (n === 3) {
    const exact = (6 / Math.PI) * (Math.asin(Math.sqrt(1 - complement)) - Math.PI / 3);
    return Math.max(0, exact);
  }
  const y = Math.log(complement);
  if (complement === 0) return 1;
  if (n <= 11) {
    const most = polynomial([-2.273, 0.459], n);
    if (y >= most) return 0;
    const centre = polynomial([0.544, -0.39978, 0.025054, -6.714e-4], n);
    const scale = Math.exp(polynomial([1.3822, -0.77857, 0.062767, -0.0020322], n));
    return normalUpper((-Math.log(most - y) - centre) / scale);
  }
  const logN = Math.log(n);
  const centre = polynomial([-1.5861, -0.31082, -0.083751, 0.0038915], logN);
  const scale = Math.exp(polynomial([-0.4803, -0.082676, 0.0030302], logN));
  return normalUpper((y - centre) / scale);
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((value, coefficient) => value * x + coefficient, 0);
}
