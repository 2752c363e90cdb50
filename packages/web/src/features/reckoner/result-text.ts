import type { CalculationOutput } from '@provinghouse/core';
import { unitSign } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';

/** A result as it is shown: six significant figures, as no entry at the bench carries more; words stay words. */
export function resultText(value: number | string | null | undefined): string {
  if (value === null || value === undefined) return text.reckoner.none;
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value)) return text.reckoner.tooLarge;
  if (value !== 0 && (Math.abs(value) >= 1e9 || Math.abs(value) < 1e-6)) return signed(power(value));
  return signed(String(Number(value.toPrecision(6))));
}

/** A linked number in its field, shortened as results are; the calculation takes it in full. What was typed stays as typed. */
export function linkedText(entry: string): string {
  const value = Number(entry);
  return entry.trim() === '' || !Number.isFinite(value) ? entry : String(Number(value.toPrecision(6)));
}

/** The unit beside a field or a result; nothing for a plain number. */
export function unitText(unit: string): string {
  return unit === 'any' ? '' : unitSign(unit);
}

/** Words of core with the units in them as printed. */
export function printed(words: string): string {
  return words.replaceAll('mm2', 'mm²');
}

/** Results that are sentences stand below the numbers. */
export function isSentence({ key }: CalculationOutput): boolean {
  return key === 'sentence';
}

function power(value: number): string {
  return value.toExponential(4).replace(/e\+?(-?\d+)$/, ' × 10^$1');
}

function signed(digits: string): string {
  return digits.replaceAll('-', '\u2212');
}
