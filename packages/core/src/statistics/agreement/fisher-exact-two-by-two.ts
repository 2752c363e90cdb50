import { bracketedRoot } from '../comparison/bracketed-root.ts';
import { logGamma } from '../distribution/index.ts';
import { countTable } from './count-table.ts';

export type Alternative = 'two-sided' | 'less' | 'greater';

export interface FisherTwoByTwo {
  readonly method: string;
  readonly alternative: Alternative;
  readonly p: number | null;
  /** Conditional maximum-likelihood estimate; null when it has no bound (a zero off the diagonal) or cannot be had. */
  readonly oddsRatio: number | null;
  /** Limits of the odds ratio; an upper limit of null has no bound. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly confidence: number;
  readonly n: number;
  readonly doubts: readonly string[];
  readonly sentence: string;
}

/** ln of the number of tables, and the range of the first cell, both margins held. */
interface Support {
  readonly least: number;
  readonly logWeights: readonly number[];
  readonly seen: number;
}

/** A table this much likelier than the one seen still counts as no likelier: rounding, not chance, sets them apart. */
const tie = 1e-7;

/**
 * Exact test of a 2 x 2 table of counts (Fisher 1935): rows two products, columns two break modes, both margins held.
 * Two-sided: all tables no likelier than the one seen. Odds ratio and its limits by the noncentral hypergeometric
 * distribution (Cornfield 1956), limits of each side at half the error.
 */
export function fisherExactTwoByTwo(
  table: readonly [readonly [number, number], readonly [number, number]],
  options: { readonly alternative?: Alternative; readonly confidence?: number } = {},
): FisherTwoByTwo {
  const alternative = options.alternative ?? 'two-sided';
  const confidence = options.confidence ?? 0.95;
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('a confidence lies between 0 and 1');
  const { n } = countTable(table);
  const method = 'Exact test of a 2 x 2 table (Fisher 1935)';
  const support = supportOf(table);
  const known = { method, alternative, confidence, n };
  if (support.logWeights.length < 2) {
    const reason = 'a row or a column has no counts: there is nothing to tell apart';
    const sentence = `The counts cannot be compared: ${reason}.`;
    return { ...known, p: null, oddsRatio: null, lower: null, upper: null, doubts: [reason], sentence };
  }
  const p = pOf(support, alternative);
  const tail = alternative === 'two-sided' ? (1 - confidence) / 2 : 1 - confidence;
  const most = support.least + support.logWeights.length - 1;
  return {
    ...known,
    p,
    oddsRatio: oddsRatioOf(support),
    lower: alternative === 'less' ? 0 : limitOf(support, { tail, side: 'upper' }),
    upper: alternative === 'greater' ? null : limitOf(support, { tail, side: 'lower' }),
    doubts:
      support.seen === most ? ['the odds ratio has no upper bound: a kind of break was never seen on one side'] : [],
    sentence: fisherSentence(p),
  };
}

/** One plain sentence for a p value of counts. */
export function fisherSentence(p: number): string {
  const chance = p >= 0.0001 ? `with probability ${Number(p.toPrecision(2))}` : 'less than once in 10 000';
  return `Were the kinds of break spread over the rows by chance alone, counts as uneven as these or more would come about ${chance}.`;
}

function supportOf([[a, b], [c, d]]: readonly [readonly [number, number], readonly [number, number]]): Support {
  const [firstRow, secondRow, firstColumn] = [a + b, c + d, a + c];
  const least = Math.max(0, firstColumn - secondRow);
  const most = Math.min(firstRow, firstColumn);
  const raw = Array.from({ length: most - least + 1 }, (_, index) => {
    const x = least + index;
    return logChoose(firstRow, x) + logChoose(secondRow, firstColumn - x);
  });
  const top = raw.reduce((greatest, value) => Math.max(greatest, value), Number.NEGATIVE_INFINITY);
  return { least, logWeights: raw.map((value) => value - top), seen: a };
}

function logChoose(n: number, k: number): number {
  return logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
}

function pOf({ least, logWeights, seen }: Support, alternative: Alternative): number {
  const weights = logWeights.map(Math.exp);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const own = weights[seen - least] ?? 0;
  const counts = weights.map((weight, index) => {
    if (alternative === 'less') return index <= seen - least;
    if (alternative === 'greater') return index >= seen - least;
    return weight <= own * (1 + tie);
  });
  return Math.min(1, weights.reduce((sum, weight, index) => sum + (counts[index] ? weight : 0), 0) / whole);
}

/** Shares of the tables under an odds ratio told by its logarithm. */
function sharesAt({ least, logWeights }: Support, logOdds: number): number[] {
  const logs = logWeights.map((weight, index) => weight + (least + index) * logOdds);
  const top = logs.reduce((greatest, value) => Math.max(greatest, value), Number.NEGATIVE_INFINITY);
  const weights = logs.map((value) => Math.exp(value - top));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / whole);
}

/** The odds ratio under which the count seen is the mean (conditional maximum likelihood). */
function oddsRatioOf(support: Support): number | null {
  const { least, logWeights, seen } = support;
  if (seen === least) return 0;
  if (seen === least + logWeights.length - 1) return null;
  return rootOver((logOdds) => {
    const mean = sharesAt(support, logOdds).reduce((sum, share, index) => sum + share * (least + index), 0);
    return mean - seen;
  });
}

/** The odds ratio under which the tail from the count seen outwards holds just `tail`; the open end is 0 or null. */
function limitOf(
  support: Support,
  { tail, side }: { readonly tail: number; readonly side: 'upper' | 'lower' },
): number | null {
  const { least, logWeights, seen } = support;
  if (side === 'upper' && seen === least) return 0;
  if (side === 'lower' && seen === least + logWeights.length - 1) return null;
  return rootOver((logOdds) => {
    const inTail = (index: number) => (side === 'upper' ? index >= seen - least : index <= seen - least);
    return sharesAt(support, logOdds).reduce((sum, share, index) => sum + (inTail(index) ? share : 0), 0) - tail;
  });
}

function rootOver(f: (logOdds: number) => number): number | null {
  for (let reach = 4; reach <= 4096; reach *= 2) {
    const root = bracketedRoot(f, { lower: -reach, upper: reach, tolerance: 1e-13 });
    if (root !== null) return Math.exp(root);
  }
  return null;
}
