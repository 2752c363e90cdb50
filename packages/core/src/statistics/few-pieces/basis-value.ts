/**
 * The two basis values of design handbooks for composite materials, used here for any strength:
 * B: 90 % of pieces reach it, A: 99 % do, each with 95 % confidence (MIL-HDBK-17-1F, Vol. 1, chapter 8).
 */
export type Basis = 'A' | 'B';

/** Share of pieces which reach the basis value. */
export function basisCoverage(basis: Basis): number {
  return basis === 'B' ? 0.9 : 0.99;
}

export const basisConfidence = 0.95;

export interface BasisValue {
  readonly basis: Basis;
  readonly n: number;
  readonly value: number | null;
  /** The factor used: k of the normal form, V of the Weibull form, k of Hanson and Koopmans; null where none is. */
  readonly factor: number | null;
  readonly method: string;
  readonly doubts: readonly string[];
  readonly sentence: string;
}
