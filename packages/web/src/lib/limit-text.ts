import type { Judgement, Limit } from '@provinghouse/core';
import { setFigure, unitSign } from './figure.ts';
import { text } from './text.ts';

/** A limit in figures: `at least 40.2 kN`, `23.3 to 24.7 mm`. The digits are those of the rulebook, never rounded. */
export function limitText(limit: Pick<Limit, 'lower' | 'upper' | 'nominal' | 'unit'>): string {
  const { lower, upper, nominal, unit } = limit;
  if (lower === null && upper === null) {
    return nominal === null ? text.limit.none : `${text.limit.nominal(digits(nominal))}\u00a0${unitSign(unit)}`;
  }
  return `${rangeText(lower === null ? null : digits(lower), upper === null ? null : digits(upper))}\u00a0${unitSign(unit)}`;
}

/**
 * What a value must read to conform, one digit further than its uncertainty is shown, so that a value at the bound is not rounded
 * across it. Without an uncertainty the bounds are the limits themselves.
 */
export function acceptanceText(judgement: Judgement): string | null {
  const { acceptance, measured, limit } = judgement;
  if (acceptance.lower === null && acceptance.upper === null) return null;
  const u = measured?.expandedUncertainty ?? null;
  if (u === null || u === 0) return limitText({ ...limit, ...acceptance });
  const shown = (bound: number | null) =>
    bound === null ? null : setFigure({ value: bound, unit: limit.unit, uncertainty: u / 10 }).value;
  return `${rangeText(shown(acceptance.lower), shown(acceptance.upper))}\u00a0${unitSign(limit.unit)}`;
}

function rangeText(lower: string | null, upper: string | null): string {
  if (lower !== null && upper !== null) return text.limit.between(lower, upper);
  return lower === null ? text.limit.atMost(upper ?? '') : text.limit.atLeast(lower);
}

/** As the rulebook writes it; digits beyond the seventh are noise of binary arithmetic. */
function digits(value: number): string {
  return String(Number(value.toPrecision(7))).replace('-', '\u2212');
}
