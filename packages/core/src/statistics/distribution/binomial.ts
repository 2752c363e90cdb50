import { betaCdf, betaUpper } from './beta.ts';
import { requireNumber, requireProbability } from './probability.ts';

function requireTrials(n: number): void {
  if (!Number.isInteger(n) || n < 0)
    throw new RangeError(`the number of trials is a whole number of 0 or more, not ${n}`);
}

/** P(K <= k) successes in `n` trials of probability `p` each, through the incomplete beta function. */
export function binomialCdf(k: number, n: number, p: number): number {
  requireTrials(n);
  requireProbability(p);
  requireNumber('a count', k);
  const count = Math.floor(k);
  if (count < 0) return 0;
  if (count >= n) return 1;
  return betaUpper(p, count + 1, n - count);
}

/** P(K > k) successes in `n` trials of probability `p` each, computed directly. */
export function binomialUpper(k: number, n: number, p: number): number {
  requireTrials(n);
  requireProbability(p);
  requireNumber('a count', k);
  const count = Math.floor(k);
  if (count < 0) return 1;
  if (count >= n) return 0;
  return betaCdf(p, count + 1, n - count);
}
