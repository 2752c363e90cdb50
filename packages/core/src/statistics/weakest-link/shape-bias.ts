import type { ModeRecord } from './mode-record.ts';
import { shapeRoot } from './shape-root.ts';

export const shapeBiasMethod =
  'small-sample bias of the Weibull shape. All pieces broken in the mode: divided by 1 + 1.37/(n - 1.92) (R. Ross, IEEE Transactions on Dielectrics and Electrical Insulation 1 (1994) 247-253; formula from memory, within 0.001 of simulated unbiasing factors). Others censored: shape equation with r - (1 + r/n) in place of r breaks among n pieces, which is the modified profile likelihood of Yang and Xie, Journal of Statistical Computation and Simulation 73 (2003) 115-123 (from memory) at r = n; the term r/n is found by simulation here';

/**
 * The maximum-likelihood `shape` of a mode with its mean bias taken off. With few breaks the likelihood makes a product look more even than it
 * is. null below three pieces or two breaks, where there is nothing to correct by.
 */
export function correctedShape(record: ModeRecord, shape: number): number | null {
  const { breakCount: r, count: n } = record;
  if (r >= n) {
    const factor = unbiasingFactor(n);
    return factor && shape * factor;
  }
  const lead = 1 - (1 + r / n) / r;
  if (r < 2 || lead <= 0) return null;
  const root = shapeRoot([record], shape * lead, lead);
  return Number.isFinite(root.shape) ? root.shape : null;
}

/** The factor below 1 for a maximum-likelihood shape from `pieces` pieces that all broke in one mode; null below three. */
export function unbiasingFactor(pieces: number): number | null {
  return pieces < 3 ? null : 1 / (1 + 1.37 / (pieces - 1.92));
}
