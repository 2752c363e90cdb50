import { binomialCdf, binomialUpper, logGamma } from '../distribution/index.ts';
import { plainNumber, plainPercent } from './plain-number.ts';
import { requireCount, requireShare } from './sample.ts';

export interface BinomialTest {
  readonly count: number;
  readonly n: number;
  /** The share supposed. */
  readonly supposed: number;
  readonly alternative: 'different' | 'greater' | 'less';
  readonly p: number;
  readonly method: string;
  readonly sentence: string;
}

const method = 'Exact binomial test (Conover, Practical nonparametric statistics, 1971, 97-104)';

/** Does `count` of `n` contradict the supposed share? Two-sided: all counts no likelier than the one seen. With n = 0 p is 1. */
export function binomialTest(
  { count, n }: { readonly count: number; readonly n: number },
  options: { readonly supposed: number; readonly alternative?: BinomialTest['alternative'] },
): BinomialTest {
  const { supposed, alternative = 'different' } = options;
  requireCount(n);
  requireCount(count);
  if (count > n) throw new RangeError(`${count} of ${n} is no proportion`);
  requireShare('the supposed share', supposed);
  const p = probabilityOf({ count, n, supposed }, alternative);
  const verb = p < 0.05 ? 'speak against' : 'do not speak against';
  const sentence = `${count} of ${n} ${verb} a true share of ${plainPercent(supposed)} (p = ${plainNumber(Number(p.toPrecision(2)))}).`;
  return { count, n, supposed, alternative, p, method, sentence };
}

interface Counted {
  readonly count: number;
  readonly n: number;
  readonly supposed: number;
}

function probabilityOf({ count, n, supposed }: Counted, alternative: BinomialTest['alternative']): number {
  const atMost = binomialCdf(count, n, supposed);
  const atLeast = binomialUpper(count - 1, n, supposed);
  if (alternative === 'less') return atMost;
  if (alternative === 'greater') return atLeast;
  const likely = logLikelihood(count, { n, supposed }) + 1e-7;
  const mean = n * supposed;
  if (count === mean) return 1;
  const other = otherSide(count, { n, supposed, likely });
  if (count < mean) return Math.min(1, atMost + (other === null ? 0 : binomialUpper(other - 1, n, supposed)));
  return Math.min(1, atLeast + (other === null ? 0 : binomialCdf(other, n, supposed)));
}

/** The count nearest the mean on the other side that is no likelier than the one seen; null where there is none. */
function otherSide(
  count: number,
  { n, supposed, likely }: { readonly n: number; readonly supposed: number; readonly likely: number },
): number | null {
  const mean = n * supposed;
  const upwards = count < mean;
  let near = upwards ? Math.ceil(mean) : Math.floor(mean);
  const end = upwards ? n : 0;
  const step = upwards ? 1 : -1;
  while (logLikelihood(near, { n, supposed }) > likely) {
    if (near === end) return null;
    near += step;
  }
  return near;
}

function logLikelihood(k: number, { n, supposed }: { readonly n: number; readonly supposed: number }): number {
  const ways = logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
  return ways + k * Math.log(supposed) + (n - k) * Math.log1p(-supposed);
}
