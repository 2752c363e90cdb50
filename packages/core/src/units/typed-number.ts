import { tidy } from '../chain/bench-unit.ts';
import { fromBench, parseUnit, toBench } from './parse-unit.ts';
import type { Unit } from './unit.ts';

/** What is known of the field a number is typed into. */
export interface TypedNumberField {
  /** Unit of the field, as the screen shows it: `mm`, `kN`, `%`. Null or absent: a bare number, no unit may be typed. */
  readonly unit?: string | null | undefined;
  /**
   * Where the number must lie to make sense, in the unit of the field. It settles only one doubt: whether `1,234` is a decimal
   * comma. It never refuses a number.
   */
  readonly within?: { readonly least: number; readonly greatest: number } | undefined;
  /** The decimal sign, where the rest of a table has shown it. */
  readonly decimal?: '.' | ',' | undefined;
}

/** A number as it was typed, or why it could not be read. */
export type TypedNumber =
  | {
      readonly ok: true;
      /** In the unit of the field. */
      readonly value: number;
      /** Decimals as typed; null where the unit was converted or an exponent was typed. */
      readonly decimals: number | null;
      readonly notes: readonly string[];
    }
  | {
      readonly ok: false;
      readonly code: 'empty' | 'not-a-number' | 'ambiguous-comma' | 'mixed-signs' | 'unit';
      /** What is there and what would be right. */
      readonly fault: string;
      /** The numbers it could mean, where there are several. */
      readonly readings: readonly number[];
    };

type Refusal = Extract<TypedNumber, { readonly ok: false }>;
interface PlainNumber {
  readonly ok: true;
  readonly text: string;
  readonly notes: readonly string[];
}

const edges = /^[\s\u200b\ufeff]+|[\s\u200b\ufeff]+$/g;
/** Blanks that writers put between thousands: no-break, figure, thin and narrow no-break. */
const thousandsBlank = /[\u00a0\u2007\u2009\u202f]/g;
const shape = /^([+-]?)([\d.,\u00a0\u2007\u2009\u202f]*\d[\d.,\u00a0\u2007\u2009\u202f]*)(?:[eE]([+-]?\d+))?(.*)$/s;

/**
 * Reads a number a person typed, or a calliper that types like a keyboard: decimal point or comma, blanks around it, thin or
 * no-break blanks and signs between thousands where they can be nothing else, and a unit where it is that of the field or
 * turns into it exactly (in to mm). Nothing is guessed: `1,234` is refused with both its readings unless the field says which
 * one is possible, and a unit that could mean several things is refused. A point followed by three digits is a decimal point.
 *
 * @param text as typed; empty or blank text gives the fault `empty`
 */
export function readTypedNumber(text: string, field: TypedNumberField = {}): TypedNumber {
  const trimmed = text.replace(edges, '').replace('\u2212', '-');
  if (trimmed === '') return refusal('empty', 'Nothing was typed; write a number.');
  const match = shape.exec(trimmed);
  if (match === null) return notANumber(trimmed);
  const [, sign = '', digits = '', exponent, rest = ''] = match;
  const plain = plainNumber(digits, field);
  if (!plain.ok) return plain;
  const power = exponent === undefined ? '' : `e${exponent}`;
  // Adding zero turns -0 into 0: a record has one zero.
  const value = Number(`${sign}${plain.text}${power}`) + 0;
  if (!Number.isFinite(value)) return notANumber(trimmed);
  const decimals = exponent === undefined ? (plain.text.split('.')[1]?.length ?? 0) : null;
  return inFieldUnit({ value, decimals, notes: plain.notes }, rest.replace(edges, ''), field.unit ?? null);
}

function refusal(code: Refusal['code'], fault: string, readings: readonly number[] = []): Refusal {
  return { ok: false, code, fault, readings };
}

function notANumber(text: string): Refusal {
  const shown = text.length > 40 ? `${text.slice(0, 40)}...` : text;
  return refusal('not-a-number', `"${shown}" is not a number; write one such as 8.12 or 8,12.`);
}

/** Digits with their signs as a number with a decimal point and nothing between thousands. */
function plainNumber(digits: string, field: TypedNumberField): PlainNumber | Refusal {
  const inner = digits.replace(/[\u00a0\u2007\u2009\u202f]+$/, '');
  const blanks = inner.match(thousandsBlank) !== null;
  if (blanks && !/^[1-9]\d{0,2}([\u00a0\u2007\u2009\u202f]\d{3})+([.,]\d*)?$/.test(inner)) return notANumber(inner);
  const bare = inner.replace(thousandsBlank, '');
  const points = bare.split('.').length - 1;
  const commas = bare.split(',').length - 1;
  if (commas === 0 && points <= 1) return field.decimal === ',' && points === 1 ? mixed(bare) : whole(bare);
  if (blanks) return whole(bare.replace(',', '.'));
  if (points > 0 && commas > 0) return grouped(bare, bare.lastIndexOf(',') > bare.lastIndexOf('.') ? ',' : '.', field);
  if (points > 1 || commas > 1) return grouped(bare, points > 1 ? ',' : '.', field);
  return comma(bare, field);
}

function whole(text: string): PlainNumber {
  return { ok: true, text, notes: [] };
}

function mixed(text: string): Refusal {
  return refusal('mixed-signs', `"${text}" has another decimal sign than the rest; write all numbers with one.`);
}

/** Thousands and decimals told apart by their signs: 1.234,5 or 1,234,567. */
function grouped(text: string, decimal: '.' | ',', field: TypedNumberField): PlainNumber | Refusal {
  const thousands = decimal === '.' ? ',' : '.';
  const pattern = new RegExp(`^[1-9]\\d{0,2}(\\${thousands}\\d{3})+(\\${decimal}\\d*)?$`);
  if (!pattern.test(text)) return notANumber(text);
  if (field.decimal !== undefined && field.decimal !== decimal) return mixed(text);
  return whole(text.replaceAll(thousands, '').replace(decimal, '.'));
}

/** One comma: a decimal comma, or between thousands where three digits follow one to three that begin with none. */
function comma(text: string, { decimal, within }: TypedNumberField): PlainNumber | Refusal {
  const asDecimal = text.replace(',', '.');
  if (decimal === ',') return whole(asDecimal);
  const mayBeThousands = /^[1-9]\d{0,2},\d{3}$/.test(text);
  if (!mayBeThousands) return decimal === '.' ? mixed(text) : whole(asDecimal);
  const [small, large] = [Number(asDecimal), Number(text.replace(',', ''))];
  const fits = (value: number) => within !== undefined && value >= within.least && value <= within.greatest;
  if (fits(small) && !fits(large)) {
    return { ok: true, text: asDecimal, notes: [`${text} was read with a decimal comma: ${asDecimal}.`] };
  }
  const fault = `"${text}" can be ${small} or ${large}; write ${asDecimal} or ${large}.`;
  return refusal('ambiguous-comma', fault, [small, large]);
}

interface ReadValue {
  readonly value: number;
  readonly decimals: number | null;
  readonly notes: readonly string[];
}

function inFieldUnit(read: ReadValue, typed: string, unit: string | null): TypedNumber {
  if (typed === '' || typed === unit) return { ok: true, ...read };
  const from = parseUnit(typed);
  if (from.kind === 'ambiguous') {
    const cure = `write the number in ${unit ?? 'its plain unit, alone'}.`;
    return refusal('unit', `"${typed}" can mean ${from.choices.join(' or ')}; ${cure}`);
  }
  const to = unit === null ? null : ownUnit(unit);
  if (to === null && typed.toLowerCase() === unit?.toLowerCase()) return { ok: true, ...read };
  if (from.kind === 'unknown') {
    const cure = unit === null ? 'write the number alone.' : `write the number alone, in ${unit}.`;
    const code = /^[\p{L}"%]/u.test(typed) ? 'unit' : 'not-a-number';
    return refusal(code, `"${typed}" after the number was not understood; ${cure}`);
  }
  if (to === null || to.dimension !== from.unit.dimension || from.unit.clock || to.clock) {
    const place = unit === null ? 'takes a bare number' : `is in ${unit}`;
    return refusal('unit', `This field ${place}; "${typed}" does not turn into that. Write the number alone.`);
  }
  if (to.symbol === from.unit.symbol) return { ok: true, ...read };
  const value = tidy(fromBench(toBench(read.value, from.unit), to));
  const note = `${read.value} ${from.unit.symbol} is ${value} ${to.symbol}.`;
  return { ok: true, value, decimals: null, notes: [...read.notes, note] };
}

/** The unit of a field where it is written as the unit's own symbol: `kg` on a scale is a mass, though a trace may mean kgf. */
function ownUnit(unit: string): Unit | null {
  const found = parseUnit(unit);
  return found.kind === 'known' && found.unit.symbol === unit ? found.unit : null;
}
