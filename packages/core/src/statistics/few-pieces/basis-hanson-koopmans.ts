import { basisSentence } from './basis-sentence.ts';
import { type Basis, type BasisValue, basisConfidence, basisCoverage } from './basis-value.ts';
import { hansonKoopmansFactor } from './hanson-koopmans-factor.ts';
import { nonparametricSampleSize } from './nonparametric-rank.ts';
import table from './tables/hanson-koopmans-rank.json' with { type: 'json' };

/** Rank of the second order statistic: for B the printed one, for A the greatest value; null where the method is not meant for n. */
export function hansonKoopmansRank(n: number, basis: Basis): number | null {
  if (basis === 'B') return table.rows.find((row) => row.n === n)?.r ?? null;
  const manyEnough = nonparametricSampleSize(1, { coverage: basisCoverage('A'), confidence: basisConfidence });
  return n >= 2 && n < manyEnough ? n : null;
}

/**
 * Basis value of a small sample without a normal or Weibull form (MIL-HDBK-17-1F, Vol. 1, 8.3.4.5.2): x_r (x_1 / x_r)^k.
 * All values must lie above 0; one that does not gives a null value and a doubt. With many pieces (29 for B, 299 for A)
 * the order statistics alone do, and the value is null with that advice.
 */
export function hansonKoopmansBasis(
  values: readonly number[],
  { basis, unit }: { readonly basis: Basis; readonly unit?: string },
): BasisValue {
  if (values.some((value) => !Number.isFinite(value))) throw new RangeError('a basis value takes finite numbers only');
  const n = values.length;
  const sorted = values.toSorted((a, b) => a - b);
  const rank = hansonKoopmansRank(n, basis);
  const least = sorted[0];
  const other = sorted[(rank ?? 0) - 1];
  const reason = obstacleOf({ n, rank, least, other });
  const method = `${basis}-basis value by Hanson and Koopmans (MIL-HDBK-17-1F, Vol. 1, 8.3.4.5.2), exact factor by integration`;
  if (reason !== null || rank === null || least === undefined || other === undefined) {
    const sentence = basisSentence({ basis, n, value: null, reason: reason ?? undefined });
    return { basis, n, value: null, factor: null, method, doubts: [reason ?? ''], sentence };
  }
  const factor = hansonKoopmansFactor({ n, rank, coverage: basisCoverage(basis), confidence: basisConfidence });
  const value = other * (least / other) ** factor;
  const doubts = n < 10 ? ['With so few pieces this bound is pessimistic: it trusts no form of the spread.'] : [];
  return { basis, n, value, factor, method, doubts, sentence: basisSentence({ basis, n, value, unit }) };
}

function obstacleOf(found: {
  readonly n: number;
  readonly rank: number | null;
  readonly least: number | undefined;
  readonly other: number | undefined;
}): string | null {
  const { n, rank, least = 0, other = 0 } = found;
  if (n < 2) return 'The method takes two values or more.';
  if (rank === null) return 'With so many pieces an order statistic alone is the bound.';
  if (least <= 0) return 'The method takes values above zero only.';
  if (least === other) return 'The values used are equal: the scatter is finer than the readings resolve.';
  return null;
}
