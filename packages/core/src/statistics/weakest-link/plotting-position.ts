import type { PulledPiece } from './piece.ts';

/** One break on a Weibull plot. */
export interface PlottedBreak {
  readonly force_kN: number;
  readonly links: number;
  /** Adjusted rank of the piece in this mode; null where pieces differ in links. */
  readonly adjustedRank: number | null;
  /** Cumulative hazard of one link, -ln(survival): the plot's ordinate is its logarithm. */
  readonly hazardOfOneLink: number;
}

export interface PlottedBreaks {
  readonly mode: string | null;
  readonly breaks: readonly PlottedBreak[];
  readonly method: string;
}

const rankMethod =
  'adjusted ranks of L. G. Johnson for censored pieces, median rank (i - 0.3)/(n + 0.4) (Benard), divided over the links of a piece';
const riskMethod =
  'cumulative hazard of one link after Nelson and Aalen, links at risk as weights, each break drawn at half its own step';

/**
 * Where the breaks of `mode` (null: every break) stand on a Weibull plot, by one link. Breaks of other modes and "at least" pulls are
 * suspensions. A break stands before a suspension at the same force.
 */
export function plottingPositions(pieces: readonly PulledPiece[], mode: string | null): PlottedBreaks {
  const broke = (piece: PulledPiece) => !piece.isAtLeast && (mode === null || piece.mode === mode);
  const sorted = [...pieces].sort((a, b) => a.force_kN - b.force_kN || Number(broke(b)) - Number(broke(a)));
  const links = sorted[0]?.links ?? 1;
  const equal = sorted.every((piece) => piece.links === links);
  return equal
    ? { mode, breaks: byRank(sorted, broke, links), method: rankMethod }
    : { mode, breaks: byRisk(sorted, broke), method: riskMethod };
}

type Broke = (piece: PulledPiece) => boolean;

function byRank(sorted: readonly PulledPiece[], broke: Broke, links: number): PlottedBreak[] {
  const n = sorted.length;
  let rank = 0;
  return sorted.flatMap((piece, index) => {
    if (!broke(piece)) return [];
    rank += (n + 1 - rank) / (1 + n - index);
    const failed = (rank - 0.3) / (n + 0.4);
    return [{ force_kN: piece.force_kN, links, adjustedRank: rank, hazardOfOneLink: -Math.log(1 - failed) / links }];
  });
}

function byRisk(sorted: readonly PulledPiece[], broke: Broke): PlottedBreak[] {
  let atRisk = sorted.reduce((sum, piece) => sum + piece.links, 0);
  let hazard = 0;
  return sorted.flatMap((piece) => {
    const step = 1 / atRisk;
    atRisk -= piece.links;
    if (!broke(piece)) return [];
    hazard += step;
    const hazardOfOneLink = hazard - step / 2;
    return [{ force_kN: piece.force_kN, links: piece.links, adjustedRank: null, hazardOfOneLink }];
  });
}
