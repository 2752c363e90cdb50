import type { UnitFinding } from '../units/parse-unit.ts';
import { parseUnit } from '../units/parse-unit.ts';

/** A column as its header describes it. */
export interface HeaderCell {
  /** 0-based place. */
  readonly index: number;
  /** Name without the unit; `column 3` when the file gives none. */
  readonly name: string;
  /** Text of the unit as written, or null when the file gives none. */
  readonly unitText: string | null;
  readonly finding: UnitFinding | null;
  /** Where the unit stood, in words. */
  readonly unitPlace: string;
}

interface NameAndUnit {
  readonly name: string;
  readonly unitText: string | null;
  readonly place: string;
}

const BRACKETS = /^(.*?)\s*[[({<]\s*([^[\](){}<>]*)\s*[\])}>]\s*$/;
const AFTER_SIGN = /^(.+?)\s*[/,:]\s*([^/,:]+)$/;
const AFTER_UNDERSCORE = /^(.+)_([^_]+)$/;
const AFTER_BLANK = /^(.+?)\s+(?:in\s+)?(\S+)$/;
const CLOCK_UNIT = /^(.+?)[\s_/,]+[[(]?(h{1,2}:mm:ss(?:\.s+)?)[\])]?$/i;

function isUnitText(text: string): boolean {
  return parseUnit(text).kind !== 'unknown';
}

/** "tonf (long)" ends in brackets that qualify the unit instead of holding it. */
function spelledTon(text: string): NameAndUnit | null {
  const match =
    /^(.*?)[\s_/,[(]*((?:long|short|metric|uk|us)[\s_-]+tonf?|tonf?[\s_-]*\(?(?:long|short|metric|uk|us)\)?)[\])]*$/i.exec(
      text,
    );
  return match ? { name: match[1] ?? '', unitText: match[2] ?? '', place: 'in the header' } : null;
}

/** Splits a header such as `Force [kN]`, `Force (kN)`, `Force / kN`, `Force, kN`, `force_kN` or `Force kN`. */
export function splitHeader(text: string): NameAndUnit {
  const clean = text.replace(/[\u00a0\s]+/g, ' ').trim();
  const clock = CLOCK_UNIT.exec(clean);
  if (clock) return { name: clock[1] ?? '', unitText: clock[2] ?? '', place: 'in the header' };
  const ton = spelledTon(clean);
  if (ton) return ton;
  const brackets = BRACKETS.exec(clean);
  if (brackets && (isUnitText(brackets[2] ?? '') || /\[/.test(clean) || /^[^a-z]*$|[/%²°]/i.test(brackets[2] ?? ''))) {
    return { name: (brackets[1] ?? '').trim(), unitText: brackets[2] ?? '', place: 'in brackets in the header' };
  }
  for (const pattern of [AFTER_SIGN, AFTER_UNDERSCORE, AFTER_BLANK]) {
    const match = pattern.exec(clean);
    if (match && isUnitText(match[2] ?? ''))
      return { name: match[1] ?? '', unitText: match[2] ?? '', place: 'at the end of the header' };
  }
  if (clean !== '' && clean.length > 1 && isUnitText(clean))
    return { name: '', unitText: clean, place: 'as the whole header' };
  return { name: clean, unitText: null, place: '' };
}

/** Describes every column of a layout: the header's own unit comes before the units row. */
export function headerCells(names: readonly string[], units: readonly string[] | null): HeaderCell[] {
  return names.map((text, index) => {
    const split = splitHeader(text);
    const fromRow = (units?.[index] ?? '').trim();
    const unitText = split.unitText ?? (fromRow === '' ? null : fromRow);
    return {
      index,
      // A header that is nothing but a unit is also what the column is called.
      name: split.name || text.trim() || `column ${index + 1}`,
      unitText,
      finding: unitText === null ? null : parseUnit(unitText),
      unitPlace: split.unitText === null ? 'in the units row' : split.place,
    };
  });
}
