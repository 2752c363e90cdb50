import type { PlannedNumber } from '@provinghouse/contract';
import { type Figure, setFigure } from '../../lib/figure.ts';

/** Sets a number of the plan: a share in per cent, never rounded to a certainty it is not. */
export function plannedFigure(value: number, unit: PlannedNumber['unit']): Omit<Figure, 'spread'> {
  if (unit !== 'share') return setFigure({ value, unit });
  if (value > 0.999) return { bound: '> ', value: '99.9', unit: '%' };
  if (value < 0.001) return { bound: '< ', value: '0.1', unit: '%' };
  return { bound: '', value: (100 * value).toFixed(1), unit: '%' };
}

/** A number and its unit stand on one line. */
export function unbroken(sentence: string): string {
  return sentence.replace(/(\d) (?=(?:%|kN|mm|kg|m)(?![A-Za-z]))/g, '$1\u00a0');
}

/** An input as it was put in: seven digits at most, so that nothing of it is rounded away. */
export function inputText(value: number, unit: string): string {
  if (unit === 'share') return `${Number((100 * value).toPrecision(7))}\u00a0%`;
  const digits = String(Number(value.toPrecision(7))).replace('-', '\u2212');
  return unit === '' ? digits : `${digits}\u00a0${unit}`;
}
