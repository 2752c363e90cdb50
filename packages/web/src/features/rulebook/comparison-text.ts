import type { LimitComparison, LimitRelation, SizeFreeComparison } from '@provinghouse/core';
import { unitSign } from '../../lib/figure.ts';

/** Freed of their size, printed limits differ by their rounding: this much is called the same. */
const rounding_pct = 0.5;

/** By how much in per cent, to two significant figures, without its sign; null where nothing can be said or nothing differs. */
export function changeText(change_pct: number | null): string | null {
  if (change_pct === null || !Number.isFinite(change_pct)) return null;
  const size = Math.abs(change_pct);
  if (size < 1e-6) return null;
  const shown = size >= 100 ? size.toFixed(0) : String(Number(size.toPrecision(2)));
  return `${shown}\u00a0%`;
}

/** Higher and lower are told with the change; of narrower, wider and the rest it would say something else. */
export function toldChange({ relation, change_pct }: Pick<LimitComparison, 'relation' | 'change_pct'>): string | null {
  return relation === 'higher' || relation === 'lower' ? changeText(change_pct) : null;
}

/** Same, higher or lower of numbers that are freed of the size. */
export function sizeFreeRelation({ change_pct }: SizeFreeComparison): LimitRelation {
  if (Math.abs(change_pct) <= rounding_pct) return 'same';
  return change_pct > 0 ? 'higher' : 'lower';
}

/** A number freed of its size with its unit: `2.8 d`, `315 N/mm²`. */
export function sizeFreeText(value: number, unit: SizeFreeComparison['unit']): string {
  return `${Number(value.toPrecision(3))}\u00a0${unit === 'd' ? 'd' : unitSign(unit).replace('/mm2', '/mm²')}`;
}
