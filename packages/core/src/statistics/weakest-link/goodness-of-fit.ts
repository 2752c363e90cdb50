import type { PulledPiece } from './piece.ts';
import type { WeibullFit } from './weibull-fit.ts';

export interface WeibullGoodness {
  /** Anderson-Darling statistic of the fitted law. */
  readonly andersonDarling: number;
  /** Chance of a statistic this great if the law held, roughly. */
  readonly significance: number;
  readonly method: string;
}

const method =
  'Anderson-Darling statistic with both parameters fitted; significance 1/(1 + exp(-0.1 + 1.24 ln A* + 4.48 A*)), A* = (1 + 0.2/sqrt(n)) A2 (MIL-HDBK-17-1F volume 1, section 8.3.4.2; from memory)';

/**
 * Whether the pieces look like the fitted law, all broken and in one mode: null when a piece is "at least", when there are fewer than five,
 * or without a fit. Few pieces cannot tell: a good mark with n = 5 says little.
 */
export function weibullGoodness(pieces: readonly PulledPiece[], fit: WeibullFit | null): WeibullGoodness | null {
  const n = pieces.length;
  if (!fit || n < 5 || pieces.some((piece) => piece.isAtLeast)) return null;
  const hazards = pieces
    .map((piece) => piece.links * Math.exp(fit.shape * Math.log(piece.force_kN / fit.scale_kN)))
    .sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const failed = Math.log(-Math.expm1(-(hazards[i] ?? 0)));
    const holds = -(hazards[n - 1 - i] ?? 0);
    sum += (2 * i + 1) * (failed + holds);
  }
  const andersonDarling = -n - sum / n;
  const corrected = (1 + 0.2 / Math.sqrt(n)) * andersonDarling;
  const significance = 1 / (1 + Math.exp(-0.1 + 1.24 * Math.log(corrected) + 4.48 * corrected));
  return { andersonDarling, significance, method };
}
