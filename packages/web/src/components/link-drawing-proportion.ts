import { isInputError, type Limit, type OwnStandard, specificationFor } from '@provinghouse/core';

/** What a link is drawn by, in nominal sizes d. */
export interface LinkProportion {
  readonly pitch: number;
  readonly outerWidth: number;
  /** Greatest diameter at the weld. */
  readonly weld: number;
  /** Whether the rulebook says so for this size, or what is usual for short link chain (common practice). */
  readonly basis: 'rulebook' | 'common practice';
}

/** Short link chain as it is mostly made: pitch 3 d, outside width 3.5 d, weld up to 1.1 d (common practice). */
export const usualProportion: LinkProportion = { pitch: 3, outerWidth: 3.5, weld: 1.1, basis: 'common practice' };

interface ProportionOf {
  readonly specification: string;
  readonly grade: string | null;
  readonly nominal_size_mm: number;
}

/** Proportions of the chain of a product by its specification; the usual ones where its rule is not known here. */
export function proportionOf(product: ProportionOf | null, own: readonly OwnStandard[]): LinkProportion {
  if (product === null) return usualProportion;
  const size_mm = product.nominal_size_mm;
  try {
    const { limits } = specificationFor({
      standard: product.specification,
      grade: product.grade ?? undefined,
      size_mm,
      own,
    });
    return proportionFrom(limits, size_mm);
  } catch (error) {
    if (isInputError(error)) return usualProportion;
    throw error;
  }
}

/** Proportions from limits in mm: the middle of what they allow, and the weld at its greatest. */
export function proportionFrom(limits: readonly Limit[], size_mm: number): LinkProportion {
  const of = (quantity: Limit['quantity']) => limits.find((limit) => limit.quantity === quantity);
  const pitch = middleOf(of('pitch'));
  const leastOuter = sum(of('innerWidth')?.lower, 2 * size_mm);
  const outerWidth = middle(leastOuter, of('outerWidth')?.upper ?? null) ?? middleOf(of('outerWidth'));
  const weld = of('weldDiameter')?.upper ?? null;
  if (pitch === null || outerWidth === null) return usualProportion;
  return {
    pitch: pitch / size_mm,
    outerWidth: outerWidth / size_mm,
    weld: weld === null ? usualProportion.weld : weld / size_mm,
    basis: 'rulebook',
  };
}

function middleOf(limit: Limit | undefined): number | null {
  if (limit === undefined) return null;
  return limit.nominal ?? middle(limit.lower, limit.upper) ?? limit.lower ?? limit.upper;
}

function middle(lower: number | null, upper: number | null): number | null {
  return lower === null || upper === null ? null : (lower + upper) / 2;
}

function sum(a: number | null | undefined, b: number): number | null {
  return a === null || a === undefined ? null : a + b;
}
