import { basisSentence } from './basis-sentence.ts';
import { type Basis, type BasisValue, basisConfidence, basisCoverage } from './basis-value.ts';
import type { FewValues } from './sample.ts';
import { toleranceBound } from './tolerance-bound.ts';

/** Basis value of a normal quantity: the one-sided tolerance bound with the exact factor (MIL-HDBK-17-1F, Vol. 1, 8.3.4.3). */
export function normalBasis(
  few: FewValues,
  { basis, unit }: { readonly basis: Basis; readonly unit?: string },
): BasisValue {
  const demand = { coverage: basisCoverage(basis), confidence: basisConfidence, side: 'lower' } as const;
  const { n, lower, factor, doubts } = toleranceBound({ ...few, ...demand });
  const method = `${basis}-basis value of the normal form (MIL-HDBK-17-1F, Vol. 1, 8.3.4.3), exact factor by noncentral t`;
  const sentence = basisSentence({ basis, n, value: lower, reason: doubts[0], unit });
  return { basis, n, value: lower, factor, method, doubts, sentence };
}
