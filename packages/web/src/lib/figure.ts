import { roundByUncertainty } from '@provinghouse/core';

/** A number to be shown. */
export interface FigureInput {
  readonly value: number;
  readonly unit: string;
  /** Standard or expanded, in the unit of the value; null or absent when none is known. */
  readonly uncertainty?: number | null;
  /** The true value is not below this one. */
  readonly isAtLeast?: boolean;
}

/** A number as it is set: what stands before it, its digits, its spread, its unit. */
export interface Figure {
  readonly bound: string;
  readonly value: string;
  readonly spread: string | null;
  readonly unit: string;
}

/** Decimal places where no uncertainty says how many: those a bench instrument of this kind shows. */
const usualPlaces: Readonly<Record<string, number>> = {
  '': 0,
  kN: 2,
  mm: 2,
  um: 0,
  mm2: 1,
  s: 2,
  Hz: 0,
  J: 0,
  t: 2,
  '%': 1,
  'N/mm2': 0,
  'kg/m': 2,
  'kN/mm': 2,
  'kN/s': 2,
  'mm/min': 1,
  'N/mm2/s': 1,
  'kN m/kg': 1,
};

const unitSigns: Readonly<Record<string, string>> = {
  um: 'µm',
  mm2: 'mm²',
  'N/mm2': 'N/mm²',
  'N/mm2/s': 'N/mm²/s',
  'kN m/kg': 'kN·m/kg',
};

/** A unit as printed: `um` is written µm, `N/mm2` N/mm². */
export function unitSign(unit: string): string {
  return unitSigns[unit] ?? unit.replace(/^kN m per /, 'kN·m/');
}

/**
 * Sets a number with the digits it can carry: value and uncertainty end at the second significant digit of the uncertainty
 * (JCGM 100:2008 7.2.6); without one at the places usual for the unit, or three significant figures for an unknown unit. Minus is U+2212.
 */
export function setFigure({ value, unit, uncertainty = null, isAtLeast = false }: FigureInput): Figure {
  const known = uncertainty !== null && uncertainty >= 1e-99;
  const rounded = known ? roundByUncertainty({ value, uncertainty }) : { value: usual(value, unit), uncertainty: null };
  return {
    bound: isAtLeast ? 'at least ' : '',
    value: rounded.value.replace('-', '\u2212'),
    spread: rounded.uncertainty,
    unit: unitSign(unit),
  };
}

/** The same in one line, for labels and titles: `at least 52.31 ± 0.62 kN`. */
export function figureText(input: FigureInput): string {
  const { bound, value, spread, unit } = setFigure(input);
  const body = spread === null ? value : `${value} ± ${spread}`;
  return `${bound}${body}${unit === '' ? '' : `\u00a0${unit}`}`;
}

/** An uncertainty on its own, to two significant digits: `0.62 kN`. */
export function uncertaintyText(uncertainty: number, unit: string): string {
  const { spread, value, unit: sign } = setFigure({ value: uncertainty, unit, uncertainty });
  return `${spread ?? value}\u00a0${sign}`;
}

function usual(value: number, unit: string): string {
  const places = usualPlaces[unit];
  if (places !== undefined) return unsigned(value.toFixed(places));
  if (value === 0) return '0';
  return value.toFixed(Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(Math.abs(value))))));
}

/** Rounding may leave -0.00, which is no number of the bench. */
function unsigned(digits: string): string {
  return /[1-9]/.test(digits) ? digits : digits.replace('-', '');
}
