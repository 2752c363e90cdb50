import { type CentredGroup, centred, type Group, refuseConfidence } from './group.ts';
import { type PairDifference, type PairwiseComparison, pairReason, pairsOf, unjudged } from './pair-difference.ts';
import { type RangeFamily, rangeFamily } from './range-family.ts';
import { unequalError } from './welch-two-sample.ts';

/**
 * Every pair of means compared with each group's own scatter, the error held over the whole family
 * (Games and Howell 1976, Journal of Educational Statistics 1, 113-125).
 * Groups of one value are told by their difference only. Two groups without any scatter are not judged.
 */
export function gamesHowell(
  groups: readonly Group[],
  options: { readonly confidence?: number } = {},
): PairwiseComparison {
  const { groups: filled, empty } = centred(groups);
  return gamesHowellOf(filled, { confidence: options.confidence ?? 0.95, empty });
}

/** The comparison from moments: the caller has the values centred already. */
export function gamesHowellOf(
  groups: readonly CentredGroup[],
  options: { readonly confidence: number; readonly empty: readonly string[]; readonly family?: RangeFamily },
): PairwiseComparison {
  const { confidence, empty } = options;
  refuseConfidence(confidence);
  const size = groups.filter((group) => group.variance !== null).length;
  const family = familyOf(size, options.family);
  const pairs = pairsOf(groups).map((pair) => compared(pair, { family, confidence }));
  return {
    method: 'All pairs with unequal variances (Games and Howell 1976)',
    confidence,
    pairs,
    doubts: [
      ...empty.map((name) => `${name} has no value and is left out`),
      ...groups.filter((group) => group.variance === null).map((group) => `${group.name} has one value: not compared`),
      ...groups.filter((group) => group.variance === 0).map((group) => `${group.name}: all values are equal`),
    ],
  };
}

/** A family at hand is used again when it is of the right size; making one takes longer than all its pairs. */
export function familyOf(size: number, atHand: RangeFamily | undefined): RangeFamily {
  return atHand?.groups === size ? atHand : rangeFamily(Math.max(size, 2));
}

function compared(
  pair: { readonly a: CentredGroup; readonly b: CentredGroup },
  { family, confidence }: { readonly family: RangeFamily; readonly confidence: number },
): PairDifference {
  const { a, b } = pair;
  const reason = pairReason(a, b);
  if (reason !== null || a.variance === null || b.variance === null) return unjudged(pair, reason ?? '');
  const { standardError, degreesOfFreedom } = unequalError([
    { variance: a.variance, n: a.n },
    { variance: b.variance, n: b.n },
  ]);
  const critical = family.quantile(confidence, degreesOfFreedom);
  return studentized({ ...pair, standardError, degreesOfFreedom }, { family, confidence, critical });
}

/** A pair set against the studentized range: shared with Tukey-Kramer. */
export function studentized(
  pair: {
    readonly a: CentredGroup;
    readonly b: CentredGroup;
    readonly standardError: number;
    readonly degreesOfFreedom: number;
  },
  against: { readonly family: RangeFamily; readonly confidence: number; readonly critical: number },
): PairDifference {
  const { a, b, standardError, degreesOfFreedom } = pair;
  const difference = a.offset - b.offset;
  const q = (Math.abs(difference) / standardError) * Math.SQRT2;
  const p = Math.min(1, Math.max(0, against.family.upper(q, degreesOfFreedom)));
  const half = (against.critical * standardError) / Math.SQRT2;
  return {
    first: a.name,
    second: b.name,
    difference,
    standardError,
    degreesOfFreedom,
    q,
    p,
    lower: difference - half,
    upper: difference + half,
    distinguishable: p < 1 - against.confidence,
    reason: null,
  };
}
