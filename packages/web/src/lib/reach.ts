import {
  type ConformityQuestion,
  chanceAllPass,
  detectableDifference,
  powerToShowConformity,
  proofRun,
} from '@provinghouse/core';

/** What is expected of the breaking force of a product before any pull. */
export interface Expected {
  readonly mean_kN: number;
  readonly cov_pct: number;
  readonly guard_kN: number;
  readonly minimum_kN: number;
}

/** What a number of pieces can show of a product that is as expected; null where so few can show nothing. */
export interface Reach {
  readonly pieces: number;
  /** Chance that the mean is shown to lie above the minimum. */
  readonly mean: number | null;
  /** Chance that 95 % of all pieces are shown to lie above it. */
  readonly share: number | null;
  /** Chance that every piece passes on its own. */
  readonly allPass: number;
  /** Share of all pieces that hold, at least, if all pass. */
  readonly held: number | null;
  /** Difference of two products told with a chance of 90 %, in per cent of the mean. */
  readonly told_pct: number | null;
}

const confidence = 0.95;

/** The numbers of the plan for `pieces` of each product, as the service works them out for the pieces prepared. */
export function reachOf(pieces: number, expected: Expected): Reach {
  const question = (of: ConformityQuestion['of']): ConformityQuestion => ({
    expectedMean: expected.mean_kN,
    cov_pct: expected.cov_pct,
    limit: expected.minimum_kN,
    side: 'lower',
    confidence,
    guard: expected.guard_kN,
    of,
  });
  const isFew = pieces < 2;
  return {
    pieces,
    mean: isFew ? null : powerToShowConformity(pieces, question('mean')),
    share: isFew ? null : powerToShowConformity(pieces, question({ share: 0.95 })),
    allPass: chanceAllPass(pieces, question('mean')).all,
    held: proofRun({ n: pieces, failures: 0 }, { confidence }).reliability,
    told_pct: isFew
      ? null
      : detectableDifference(pieces, { standardDeviations: [expected.cov_pct, expected.cov_pct] }, 0.9),
  };
}

const usual = [2, 3, 4, 5, 6, 8, 10, 15, 20, 30];

/** Numbers of pieces worth looking at, with the one that is planned among them. */
export function piecesToShow(planned: number | null): readonly number[] {
  const all = planned === null || planned < 1 || planned > 1000 ? usual : [...usual, planned];
  return [...new Set(all)].toSorted((a, b) => a - b);
}
