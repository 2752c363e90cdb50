import { logGamma } from '../distribution/index.ts';
import { invertTail } from '../distribution/inversion.ts';
import { rankConfidence } from './nonparametric-rank.ts';
import { requireShare } from './sample.ts';

/** The two order statistics used are the least and the `rank`-th least of n values. */
export interface HansonKoopmansDemand {
  readonly n: number;
  readonly rank: number;
  readonly coverage: number;
  readonly confidence: number;
}

/**
 * k such that x_r (x_1 / x_r)^k is a lower bound, for every spread whose logarithm of the distribution function is concave in ln x.
 * The least favourable of these is the uniform one on ln F, for which the probability of a wrong bound is, with U the r-th order
 * statistic of n uniform numbers, the mean of (1 - (p / U)^(1/k))^(r-1) over U above p = 1 - coverage
 * (Hanson and Koopmans, Annals of Mathematical Statistics 35 (1964) 1561-1570). Where x_r itself is a bound k is 0.
 */
export function hansonKoopmansFactor({ n, rank, coverage, confidence }: HansonKoopmansDemand): number {
  requireShare('the coverage', coverage);
  requireShare('the confidence', confidence);
  if (!Number.isInteger(n) || !Number.isInteger(rank) || rank < 2 || rank > n) {
    throw new RangeError(`the rank is a whole number from 2 to n, not ${rank} of ${n}`);
  }
  if (rankConfidence(n, rank, coverage) >= confidence) return 0;
  const p = 1 - coverage;
  const logWrong = (logK: number) => Math.log(wrongProbability(Math.exp(logK), { n, rank, p }));
  const logTarget = Math.log(1 - confidence);
  return Math.exp(invertTail({ logTail: logWrong, logTarget, rising: false, guess: 0.5, step: 0.5, tolerance: 1e-11 }));
}

interface Wrong {
  readonly n: number;
  readonly rank: number;
  readonly p: number;
}

/** Midpoint sums in the variable t with U = p + (1 - p) t^3 (10 - 15 t + 6 t^2), whose flat ends make them accurate. */
function wrongProbability(k: number, { n, rank, p }: Wrong): number {
  const logConstant = logGamma(n + 1) - logGamma(rank) - logGamma(n - rank + 1);
  const panels = 600;
  let sum = 0;
  for (let index = 0; index < panels; index += 1) {
    const t = (index + 0.5) / panels;
    const above = (1 - p) * smoothStep(1 - t);
    const u = p + (1 - p) * smoothStep(t);
    const logDensity = logConstant + (rank - 1) * Math.log(u) + (n - rank) * Math.log(above);
    const wrong = -Math.expm1((Math.log(p) - Math.log(u)) / k);
    sum += Math.exp(logDensity + (rank - 1) * Math.log(wrong)) * 30 * (t * (1 - t)) ** 2;
  }
  return (sum * (1 - p)) / panels;
}

function smoothStep(t: number): number {
  return t * t * t * (10 - 15 * t + 6 * t * t);
}
