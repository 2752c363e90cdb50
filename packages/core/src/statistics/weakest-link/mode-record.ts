import { isUnread, type PulledPiece } from './piece.ts';

/**
 * What the pieces say of one break mode: every piece with its links and the logarithm of its force, and which of them broke in this mode.
 * A break in any other mode, and a pull that gives "at least", stands here as a right-censored value.
 */
export interface ModeRecord {
  /** ln(force / reference), never above 0. */
  readonly logForce: Float64Array;
  readonly links: Float64Array;
  /** 1 for a break in this mode, 0 for none; a share where breaks were not read. */
  readonly breaks: Float64Array;
  readonly count: number;
  /** Sum of `breaks`. */
  readonly breakCount: number;
  /** Mean of `logForce` over the breaks; 0 without one. */
  readonly meanLogBreak: number;
  /** ln of the greatest force of all pieces, in ln kN. */
  readonly logReference: number;
}

/** The record of breaks in `mode`; null takes every break, whatever its mode. */
export function modeRecord(pieces: readonly PulledPiece[], mode: string | null): ModeRecord {
  const logReference = Math.log(Math.max(...pieces.map((piece) => piece.force_kN)));
  const share = mode === null ? 1 : shareOfUnread(pieces, mode);
  const breaks = Float64Array.from(pieces, (piece) => {
    if (piece.isAtLeast) return 0;
    if (isUnread(piece)) return share;
    return mode === null || piece.mode === mode ? 1 : 0;
  });
  const logForce = Float64Array.from(pieces, (piece) => Math.log(piece.force_kN) - logReference);
  const links = Float64Array.from(pieces, (piece) => piece.links);
  return recordOf(logForce, links, breaks, logReference);
}

/** Breaks nobody read are shared out among the modes as the read ones are. */
function shareOfUnread(pieces: readonly PulledPiece[], mode: string): number {
  const read = pieces.filter((piece) => !piece.isAtLeast && piece.mode !== null);
  return read.length === 0 ? 0 : read.filter((piece) => piece.mode === mode).length / read.length;
}

export function recordOf(
  logForce: Float64Array,
  links: Float64Array,
  breaks: Float64Array,
  logReference: number,
): ModeRecord {
  let breakCount = 0;
  let sum = 0;
  for (let i = 0; i < breaks.length; i++) {
    const broke = breaks[i] ?? 0;
    breakCount += broke;
    sum += broke * (logForce[i] ?? 0);
  }
  const meanLogBreak = breakCount > 0 ? sum / breakCount : 0;
  return { logForce, links, breaks, count: breaks.length, breakCount, meanLogBreak, logReference };
}

/** ln of the sum of links x (force / reference)^shape over all pieces: the exposure that meets the breaks in the likelihood. */
export function logExposure(record: ModeRecord, shape: number): number {
  const { logForce, links, count } = record;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += (links[i] ?? 0) * Math.exp(shape * (logForce[i] ?? 0));
  return Math.log(sum);
}
