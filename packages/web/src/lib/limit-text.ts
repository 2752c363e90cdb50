import type { Limit } from '@provinghouse/core';
import { unitSign } from './figure.ts';
import { text } from './text.ts';

/** A limit in figures: `at least 40.2 kN`, `23.3 to 24.7 mm`. The digits are those of the rulebook, never rounded. */
export function limitText(bounds: Pick<Limit, 'lower' | 'upper' | 'unit'>): string {
  return `${rangeText(bounds)}\u00a0${unitSign(bounds.unit)}`;
}

/** The bounds without their unit; a guarded bound is a sum, so digits beyond the seventh are noise of the arithmetic. */
export function rangeText({ lower, upper }: Pick<Limit, 'lower' | 'upper'>): string {
  if (lower !== null && upper !== null) return text.limit.between(digits(lower), digits(upper));
  if (lower !== null) return text.limit.atLeast(digits(lower));
  if (upper !== null) return text.limit.atMost(digits(upper));
  return text.limit.none;
}

function digits(value: number): string {
  return String(Number(value.toPrecision(7))).replace('-', '\u2212');
}
