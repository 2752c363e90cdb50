/** One pulled piece, as the weakest-link finding needs it. */
export interface PulledPiece {
  /** Links under load; any positive measure of length serves when all pieces use the same. */
  readonly links: number;
  /** Maximum force of the pull. */
  readonly force_kN: number;
  /** Where it broke: 'bar', 'weld', 'beside weld', or any word; null when the break was not read, or is no break of the chain. */
  readonly mode: string | null;
  /** True for a grip break, a stopped or a clipped pull: the piece would have borne at least this force. */
  readonly isAtLeast: boolean;
}

/** The break mode of a break position in the words of the record; null for a break in the grip, which is no break of the chain. */
export function breakModeOf(position: string): string | null {
  if (position === 'in grip') return null;
  return position === 'crown' || position === 'shank' ? 'bar' : position;
}

export interface UsablePieces {
  readonly usable: readonly PulledPiece[];
  /** Pieces with a force of zero: the logarithm of a force is what is fitted. */
  readonly atZero: number;
}

/**
 * The pieces a Weibull law can be fitted to. Not finite or negative forces and link counts that are not positive are the caller's
 * fault (RangeError); forces of zero are left out and counted.
 */
export function usablePieces(pieces: readonly PulledPiece[]): UsablePieces {
  for (const { links, force_kN } of pieces) {
    if (!Number.isFinite(links) || links <= 0) throw new RangeError('a piece has a positive number of links');
    if (!Number.isFinite(force_kN) || force_kN < 0) throw new RangeError('a force is a finite number, not below zero');
  }
  const usable = pieces.filter((piece) => piece.force_kN > 0);
  return { usable, atZero: pieces.length - usable.length };
}

/** Modes in which at least one piece broke, the most frequent first, then by name. */
export function brokenModes(pieces: readonly PulledPiece[]): string[] {
  const counts = new Map<string, number>();
  for (const piece of pieces) {
    if (!piece.isAtLeast && piece.mode !== null) counts.set(piece.mode, (counts.get(piece.mode) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0], 'en')).map(([mode]) => mode);
}

/** True for a break whose mode nobody read. */
export function isUnread(piece: PulledPiece): boolean {
  return !piece.isAtLeast && piece.mode === null;
}
