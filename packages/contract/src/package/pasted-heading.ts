import { parseUnit } from '@provinghouse/core';
import { nearest } from './nearest.ts';
import type { Table } from './table.ts';

/** What a heading of a pasted table was found to mean. */
export interface HeadingMatch<T> {
  readonly meaning: T;
  /** The heading is not one of its names, only like one. */
  readonly isNear: boolean;
  /** Said where the heading was not the name itself: a near miss, or a unit that was not written. */
  readonly note: string | null;
}

/** A heading that means nothing, or says another unit than the column has. */
export interface HeadingFault {
  readonly fault: string;
}

/** One meaning with everything it may be called. */
export interface Naming<T> {
  readonly meaning: T;
  /** The name used in notes. */
  readonly name: string;
  readonly names: readonly string[];
  /** Unit of the column; null where it has none. */
  readonly unit: string | null;
}

const unitSuffix = /_(mm_per_min|mm_per_kN|mm|um|kN|kg|m|pct)$/;
const unitTexts: Readonly<Record<string, string>> = { pct: '%', mm_per_min: 'mm/min', mm_per_kN: 'mm/kN' };

/** The unit at the end of a column's name, as it is written beside numbers: `value_mm` gives `mm`. */
export function unitOfColumn(name: string): string | null {
  const suffix = unitSuffix.exec(name)?.[1];
  return suffix === undefined ? null : (unitTexts[suffix] ?? suffix);
}

/** The columns of a table with their names, and the words their descriptions begin with where no two share them. */
export function columnNamings(table: Table): Naming<string>[] {
  const namings = Object.entries(table.fields).map(([name, { description }]) => ({
    meaning: name,
    name,
    names: [name.replace(unitSuffix, ''), ...describedAs(description)],
    unit: unitOfColumn(name),
  }));
  const uses = new Map<string, number>();
  for (const text of namings.flatMap(({ names }) => [...new Set(names.map(plainText))])) {
    uses.set(text, (uses.get(text) ?? 0) + 1);
  }
  return namings.map((naming) => ({
    ...naming,
    names: naming.names.filter((text) => uses.get(plainText(text)) === 1),
  }));
}

/** A description and its first words, with and without the article: `the reading, mm` is also `reading`. */
function describedAs(description: string): readonly string[] {
  const first = description.split(/[,;:]/)[0] ?? description;
  return [description, first, first.replace(/^(the|which) /, '')].filter((text) => /[a-z]/i.test(text));
}

/**
 * Finds what a heading means. Capitals, blanks, underlines and brackets do not count. A unit in the heading must be that of
 * the column: nothing is converted on the strength of a heading. A near miss is taken and noted.
 */
export function matchHeading<T>(heading: string, namings: readonly Naming<T>[]): HeadingMatch<T> | HeadingFault | null {
  const own = namings.find(({ name }) => name === heading);
  if (own !== undefined) return { meaning: own.meaning, isNear: false, note: null };
  const { words, unit } = splitUnit(heading);
  const wanted = plainText(words);
  const names = new Map(namings.flatMap((naming) => naming.names.map((text) => [plainText(text), naming] as const)));
  const exact = names.get(wanted) ?? names.get(plainText(heading));
  // Short headings are near to everything.
  const near = exact === undefined && wanted.length >= 4 ? nearest(wanted, names.keys()) : null;
  const found = exact ?? (near === null ? undefined : names.get(near));
  if (found === undefined) return null;
  if (unit !== null && unit !== found.unit) {
    const cure = found.unit === null ? 'has no unit' : `is in ${found.unit}`;
    return { fault: `"${heading}" is in ${unit}, but ${found.name} ${cure}; convert the column first` };
  }
  const notes = [
    exact === undefined ? `"${heading}" was read as ${found.name}` : null,
    unit === null && found.unit !== null && !hasUnit(heading, found.unit)
      ? `"${heading}" says no unit: its numbers were read as ${found.unit}`
      : null,
  ].filter((text) => text !== null);
  return { meaning: found.meaning, isNear: exact === undefined, note: notes.length === 0 ? null : notes.join('; ') };
}

/** A unit at the end of a heading: in brackets, after a slash or comma, or as its last word. */
function splitUnit(heading: string): { readonly words: string; readonly unit: string | null } {
  const bracketed = /^(.*?)\s*[[({<]\s*([^\])}>]+?)\s*[\])}>]\s*$/.exec(heading);
  const ended = bracketed ?? /^(.*?)(?:\s*[/,]\s*|[\s_])([^\s_/,]+)$/.exec(heading);
  const [, words = '', tail = ''] = ended ?? [];
  const unit = ended === null ? null : unitText(tail);
  return unit === null ? { words: heading, unit: null } : { words, unit };
}

function unitText(text: string): string | null {
  if (text === '%' || text === 'pct') return '%';
  if (text === 'g/m2' || text === 'g/m²' || text === 'mm/min' || text === 'mm/kN') return text.replace('²', '2');
  // A scale shows kilograms of mass, and no heading here is in kilograms-force.
  if (text === 'kg' || text === 't') return text;
  const found = parseUnit(text);
  if (found.kind === 'known') return found.unit.symbol;
  return found.kind === 'ambiguous' ? text : null;
}

function hasUnit(heading: string, unit: string): boolean {
  return heading.split(/[\s_[\](){},/]+/).some((word) => unitText(word) === unit);
}

/** A heading or choice without what does not count: capitals, blanks, underlines, brackets. */
export function plainText(text: string): string {
  return text
    .normalize('NFKC')
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replaceAll(/[\s_\-.:,;/()[\]{}]+/g, ' ')
    .trim();
}
