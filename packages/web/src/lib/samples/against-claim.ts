import type { Row } from '@provinghouse/contract';
import { type Limit, linkGeometry, type OwnStandard, type Quantity } from '@provinghouse/core';
import { lookUp } from '../specification-of.ts';

/** What the specification of a product lets expect of a length of it. */
export interface Expectation {
  readonly massPerMetre: Limit | null;
  /** Of a plain link of the nominal shape, without weld upset, kg/m; null where the specification leaves the shape open. */
  readonly massByShape_kg_per_m: number | null;
  /** Least pitch, mm: the lower limit, else the nominal one. */
  readonly pitch_mm: number | null;
}

/** Nothing is expected of a product whose specification is not at hand. */
export function expectationOf(product: Row<'products'> | undefined, own: readonly OwnStandard[]): Expectation {
  if (!product) return { massPerMetre: null, massByShape_kg_per_m: null, pitch_mm: null };
  const claim = {
    specification: product.specification,
    grade: product.grade ?? '',
    size_mm: product.nominal_size_mm,
  };
  const found = lookUp(claim, own);
  const limits = found !== null && 'specification' in found ? found.specification.limits : [];
  const limitOf = (wanted: Quantity) => limits.find(({ quantity }) => quantity === wanted) ?? null;
  const pitch = limitOf('pitch');
  return {
    massPerMetre: limitOf('massPerMetre'),
    massByShape_kg_per_m: massByShape(product.nominal_size_mm, pitch, limitOf('innerWidth')),
    pitch_mm: pitch?.lower ?? pitch?.nominal ?? null,
  };
}

/** Source: geometry of a plain link, see `linkGeometry` of core; within 4 % of published masses. */
function massByShape(size_mm: number, pitch: Limit | null, width: Limit | null): number | null {
  const pitch_mm = middleOf(pitch);
  const innerWidth_mm = width?.nominal ?? width?.lower ?? null;
  if (pitch_mm === null || innerWidth_mm === null || pitch_mm < innerWidth_mm) return null;
  return linkGeometry({ size_mm, pitch_mm, innerWidth_mm }).massPerMetre_kg_per_m;
}

function middleOf(limit: Limit | null): number | null {
  if (limit === null) return null;
  const { nominal, lower, upper } = limit;
  return nominal ?? (lower === null || upper === null ? null : (lower + upper) / 2);
}

/** Mass per metre; null without both, or of nothing. */
export function massPerMetre(length_m: number | null, mass_kg: number | null): number | null {
  return length_m === null || mass_kg === null || length_m <= 0 ? null : mass_kg / length_m;
}

/** How far a mass per metre lies from the one expected, in per cent of it: the nominal one, else that of the shape; null without either. */
export function massDeviation_pct(
  found: number | null,
  { massPerMetre: limit, massByShape_kg_per_m }: Expectation,
): number | null {
  const nominal = limit?.nominal ?? massByShape_kg_per_m;
  return found === null || nominal === null || nominal === 0 ? null : 100 * (found / nominal - 1);
}
