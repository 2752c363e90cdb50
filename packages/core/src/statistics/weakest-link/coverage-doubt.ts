import type { BreakModes } from './break-mode.ts';
import type { PulledPiece } from './piece.ts';

/** Pieces below which the profile interval of a shape is true clearly less often than stated (docs/reference/coverage.md). */
const FEW_FOR_PROFILE = 10;
/** Breaks in each mode from which the bounds are neither too bold nor far too careful. */
const ENOUGH_BREAKS = 8;

/**
 * Where the stated confidence does not hold as stated, by simulated campaigns of five-link pieces with 2 and 5 % scatter
 * (docs/reference/coverage.md, whose rows a test holds against these sentences).
 */
export function coverageDoubts(pieces: readonly PulledPiece[], { seen, unseen }: BreakModes): string[] {
  const doubts: string[] = [];
  const few = seen.some(({ finding }) => finding.breaks < ENOUGH_BREAKS);
  if (seen.length === 1 && unseen.length === 0 && pieces.length <= 30) {
    doubts.push(
      `The bound counts on the ${seen[0]?.finding.mode ?? ''} being the only way to break. Where welds break one piece in ten, and break none of these, such a bound can be true as seldom as every other time: list the modes to be looked for.`,
    );
  }
  if (unseen.length > 0 || few) {
    doubts.push(
      'With so few breaks in a mode the long-chain bound is true more often than stated: it is on the safe side, often by half.',
    );
  }
  if (seen.some(({ finding }) => finding.likelihood !== null) && pieces.length <= FEW_FOR_PROFILE) {
    doubts.push(
      `With ${pieces.length} pieces the 95 % profile interval of a shape is true only 8 to 9 times in ten, and bounds by profile likelihood less often still; the Bayesian and the bootstrap bounds are not touched by this.`,
    );
  }
  return doubts;
}
