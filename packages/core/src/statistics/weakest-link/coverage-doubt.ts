import type { BreakModeFinding } from './break-mode.ts';
import type { PulledPiece } from './piece.ts';

/** How far the stated confidence is to be trusted, from simulated campaigns (docs/reference/coverage.md); null where it holds. */
export function coverageDoubt(_pieces: readonly PulledPiece[], _modes: readonly BreakModeFinding[]): string | null {
  return null;
}
