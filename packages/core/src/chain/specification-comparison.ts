import { meanStress_N_per_mm2, standardGravity_m_per_s2 } from './grade-formula.ts';
import { type Limit, type Quantity, quantityNames, type Specification } from './specification.ts';

/**
 * How the limit of the second specification stands to that of the first. Higher and lower speak of the bound or the nominal value;
 * narrower and wider of two bounds; `apart` of limits of different kinds or ranges that neither holds the other.
 */
export type LimitRelation = 'same' | 'higher' | 'lower' | 'narrower' | 'wider' | 'apart' | 'first only' | 'second only';

/** A quantity of two specifications side by side. */
export interface LimitComparison {
  readonly quantity: Quantity;
  /** Lengths over different numbers of links stand in rows of their own. */
  readonly links: number | null;
  readonly first: Limit | null;
  readonly second: Limit | null;
  readonly relation: LimitRelation;
  /** Second over first less one, of the number that leads; null where one of them has none. */
  readonly change_pct: number | null;
  /** The leading numbers freed of the size; null where the quantity or a size gives none. */
  readonly bySize: SizeFreeComparison | null;
}

/** Lengths over the nominal size, forces over the nominal area, mass per metre over its square. */
export interface SizeFreeComparison {
  readonly unit: 'd' | 'N/mm2' | 'kg/m/mm2' | '%';
  readonly first: number;
  readonly second: number;
  readonly change_pct: number;
}

/** Limits that differ by no more than binary arithmetic are the same. */
const hair = 1e-9;

/** Two specifications, quantity by quantity, in the order in which a piece is gauged, weighed and pulled. */
export function compareSpecifications(first: Specification, second: Specification): readonly LimitComparison[] {
  const rows = new Map<string, Limit>();
  for (const limit of [...first.limits, ...second.limits]) rows.set(rowOf(limit), limit);
  const order = Object.keys(quantityNames);
  return [...rows.values()]
    .toSorted((a, b) => order.indexOf(a.quantity) - order.indexOf(b.quantity) || (a.links ?? 0) - (b.links ?? 0))
    .map(({ quantity, links }) => {
      const wanted = rowOf({ quantity, links });
      const pair = {
        first: first.limits.find((limit) => rowOf(limit) === wanted) ?? null,
        second: second.limits.find((limit) => rowOf(limit) === wanted) ?? null,
      };
      return {
        quantity,
        links,
        ...pair,
        relation: relationOf(pair.first, pair.second),
        change_pct: changeOf(leading(pair.first), leading(pair.second)),
        bySize: sizeFree(pair, { first: first.nominalSize_mm, second: second.nominalSize_mm }),
      };
    });
}

function rowOf({ quantity, links }: Pick<Limit, 'quantity' | 'links'>): string {
  return `${quantity} ${links ?? ''}`;
}

function relationOf(first: Limit | null, second: Limit | null): LimitRelation {
  if (first === null) return 'second only';
  if (second === null) return 'first only';
  const sides = [side(first.lower, second.lower), side(first.upper, second.upper), side(first.nominal, second.nominal)];
  if (sides.includes('one only')) return 'apart';
  const [lower, upper, nominal] = sides;
  if (lower === 'none' && upper === 'none') return oneSided(nominal);
  if (upper === 'none') return oneSided(lower);
  if (lower === 'none') return oneSided(upper);
  return twoSided(lower, upper, nominal);
}

type Side = 'none' | 'one only' | 'same' | 'higher' | 'lower' | undefined;

function side(first: number | null, second: number | null): Side {
  if (first === null && second === null) return 'none';
  if (first === null || second === null) return 'one only';
  if (Math.abs(second - first) <= hair * Math.max(Math.abs(first), Math.abs(second))) return 'same';
  return second > first ? 'higher' : 'lower';
}

function oneSided(found: Side): LimitRelation {
  return found === 'higher' || found === 'lower' || found === 'same' ? found : 'apart';
}

function twoSided(lower: Side, upper: Side, nominal: Side): LimitRelation {
  if (lower === 'same' && upper === 'same') return nominal === 'same' || nominal === 'none' ? 'same' : 'apart';
  if (lower !== 'lower' && upper !== 'higher') return 'narrower';
  if (lower !== 'higher' && upper !== 'lower') return 'wider';
  return lower === upper ? oneSided(lower) : 'apart';
}

/** The number a limit is known by: its nominal value, else its bound. */
function leading(limit: Limit | null): number | null {
  if (limit === null) return null;
  return limit.nominal ?? limit.lower ?? limit.upper;
}

function changeOf(first: number | null, second: number | null): number | null {
  return first === null || second === null || first === 0 ? null : 100 * (second / first - 1);
}

function sizeFree(
  pair: { readonly first: Limit | null; readonly second: Limit | null },
  sizes: { readonly first: number; readonly second: number },
): SizeFreeComparison | null {
  const first = freedOfSize(pair.first, sizes.first);
  const second = freedOfSize(pair.second, sizes.second);
  if (first === null || second === null) return null;
  const change_pct = changeOf(first.value, second.value);
  return change_pct === null ? null : { unit: first.unit, first: first.value, second: second.value, change_pct };
}

function freedOfSize(
  limit: Limit | null,
  size_mm: number,
): { readonly value: number; readonly unit: SizeFreeComparison['unit'] } | null {
  const value = leading(limit);
  if (limit === null || value === null) return null;
  switch (limit.unit) {
    case 'mm':
      return { value: value / size_mm, unit: 'd' };
    case 'kN':
      return { value: meanStress_N_per_mm2(value, { size_mm }), unit: 'N/mm2' };
    case 't':
      return { value: meanStress_N_per_mm2(value * standardGravity_m_per_s2, { size_mm }), unit: 'N/mm2' };
    case 'kg/m':
      return { value: value / size_mm ** 2, unit: 'kg/m/mm2' };
    default:
      return { value, unit: '%' };
  }
}
