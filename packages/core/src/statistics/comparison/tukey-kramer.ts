import { anovaOf } from './analysis-of-variance.ts';
import { familyOf, studentized } from './games-howell.ts';
import { type CentredGroup, centred, type Group, refuseConfidence } from './group.ts';
import { type PairwiseComparison, pairsOf, unjudged } from './pair-difference.ts';
import type { RangeFamily } from './range-family.ts';

/** The scatter the means are held against. */
export interface ResidualScatter {
  readonly meanSquare: number;
  readonly degreesOfFreedom: number;
}

/**
 * Every pair of means compared with one pooled scatter, the error held over the family (Tukey 1953; unequal counts:
 * Kramer 1956, Biometrics 12, 307-310). Takes equal variances; `gamesHowell` does not.
 * The residual scatter is that of the one-way table unless `residual` gives that of a richer model.
 * A group of one value takes part: its scatter is taken to be that of the others.
 */
export function tukeyKramer(
  groups: readonly Group[],
  options: { readonly confidence?: number; readonly residual?: ResidualScatter } = {},
): PairwiseComparison {
  const confidence = options.confidence ?? 0.95;
  const { groups: filled, n, empty } = centred(groups);
  return tukeyOf(filled, { n, confidence, empty, ...(options.residual ? { residual: options.residual } : {}) });
}

/** The comparison from moments: the caller has the values centred already. */
export function tukeyOf(
  groups: readonly CentredGroup[],
  options: {
    readonly n: number;
    readonly confidence: number;
    readonly empty: readonly string[];
    readonly residual?: ResidualScatter;
    readonly family?: RangeFamily;
  },
): PairwiseComparison {
  const { confidence, empty, n } = options;
  refuseConfidence(confidence);
  const residual = options.residual ?? pooled(groups, n);
  const doubts = empty.map((name) => `${name} has no value and is left out`);
  const method = 'All pairs with one pooled variance (Tukey 1953, Kramer 1956)';
  const pairs = pairsOf(groups);
  if (residual === null || residual.meanSquare <= 0) {
    const reason = 'there is no scatter within the groups to compare with';
    return { method, confidence, pairs: pairs.map((pair) => unjudged(pair, reason)), doubts: [...doubts, reason] };
  }
  const { meanSquare, degreesOfFreedom } = residual;
  if (groups.length < 2) return { method, confidence, pairs: [], doubts };
  const family = familyOf(groups.length, options.family);
  const against = { family, confidence, critical: family.quantile(confidence, degreesOfFreedom) };
  return {
    method,
    confidence,
    pairs: pairs.map(({ a, b }) => {
      const standardError = Math.sqrt(meanSquare * (1 / a.n + 1 / b.n));
      return studentized({ a, b, standardError, degreesOfFreedom }, against);
    }),
    doubts,
  };
}

function pooled(groups: readonly CentredGroup[], n: number): ResidualScatter | null {
  const table = anovaOf(groups, { n, doubts: [] });
  if (table.meanSquareWithin === null) return null;
  return { meanSquare: table.meanSquareWithin, degreesOfFreedom: table.degreesOfFreedomWithin };
}
