import { isInputError } from '../errors.ts';
import { chooseGrade } from './grade-selection.ts';
import { type RulebookEntry, rulebookIndex, sizesFor } from './rulebook-index.ts';
import type { Quantity, Specification } from './specification.ts';
import { type SpecificationRequest, specificationFor } from './specification-for.ts';
import { chooseStandard, type OwnStandard } from './standard-selection.ts';

/** One line of the list of specifications: a standard with one of its grades and sizes. */
export interface ListedSpecification {
  readonly entry: RulebookEntry;
  readonly grade: string | null;
  readonly size_mm: number;
  /** US trade size where that names the row. */
  readonly tradeSize: string | null;
  /** False where the size stands in no table here and every value goes by rule. */
  readonly isListed: boolean;
  readonly specification: Specification;
}

/** What to look for; an empty text asks for everything. */
export interface SpecificationSearch {
  /** Words that must all stand in the name, title or edition. */
  readonly words: string;
  /** As the standard writes it, or another name of the same grade: 4, M, 40. */
  readonly grade: string;
  /** In mm (`8`, `8,5 mm`) or a trade size (`3/8`, `1-1/4 in`). */
  readonly size: string;
  readonly quantity: Quantity | null;
}

/** Every specification whose size stands in a table, for each grade, with its limits: the published and then the own ones. */
export function listSpecifications(own: readonly OwnStandard[] = []): readonly ListedSpecification[] {
  return rulebookIndex(own).flatMap((entry) =>
    gradesOf(entry).flatMap((grade) =>
      sizesFor({ standard: entry.id, grade: grade ?? undefined, own }).flatMap(({ size_mm, tradeSize }) =>
        listed({ entry, grade, size_mm, tradeSize, isListed: true }, own),
      ),
    ),
  );
}

/**
 * The specifications of a list that answer a search. A size in mm that no table lists, but a rule or the grade definition covers, is
 * looked up for it and added at the end.
 */
export function findSpecifications(
  list: readonly ListedSpecification[],
  wanted: SpecificationSearch,
  own: readonly OwnStandard[] = [],
): readonly ListedSpecification[] {
  const size = readSize(wanted.size);
  if (size === null) return [];
  const hasWords = wordFilter(wanted.words);
  const hasGrade = gradeFilter(wanted.grade, own);
  const isWanted = ({ entry, grade, specification }: ListedSpecification) =>
    hasWords(entry, specification) &&
    hasGrade(entry, grade) &&
    (wanted.quantity === null || specification.limits.some(({ quantity }) => quantity === wanted.quantity));
  const found = list.filter((one) => hasSize(one, size) && isWanted(one));
  const taken = new Set(found.map(({ entry, grade }) => `${entry.id} ${grade ?? ''}`));
  const further = byRule(size, wanted.grade, own).filter(
    (one) => !taken.has(`${one.entry.id} ${one.grade ?? ''}`) && isWanted(one),
  );
  return [...found, ...further];
}

interface WantedSize {
  readonly size_mm: number | null;
  readonly tradeSize: string | null;
}

/** Null for a text that is neither a size in mm nor a trade size. */
function readSize(text: string): WantedSize | null {
  const plain = text.trim().toLowerCase();
  if (plain === '') return { size_mm: null, tradeSize: null };
  const bare = plain.replace(/\s*(mm|inch(es)?|in|")\.?$/, '').replace(/\s+/g, '-');
  if (/^\d+(-\d+\/\d+)?$|^\d+\/\d+$/.test(bare) && !/^\d+$/.test(bare)) return { size_mm: null, tradeSize: bare };
  if (!/^\d+([.,]\d+)?$/.test(bare)) return null;
  const isInch = /(in|inch|inches|")\.?$/.test(plain);
  const isMetric = plain.endsWith('mm');
  return { size_mm: isInch ? null : Number(bare.replace(',', '.')), tradeSize: isMetric ? null : bare };
}

function hasSize({ size_mm, tradeSize }: ListedSpecification, wanted: WantedSize): boolean {
  if (wanted.size_mm === null && wanted.tradeSize === null) return true;
  if (wanted.tradeSize !== null && tradeSize === wanted.tradeSize) return true;
  return wanted.size_mm !== null && Math.abs(size_mm - wanted.size_mm) < 0.05;
}

function wordFilter(text: string): (entry: RulebookEntry, specification: Specification) => boolean {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  return (entry, { title }) => {
    const all = `${entry.id} ${entry.standard} ${entry.title} ${entry.edition} ${title}`.toLowerCase();
    return words.every((word) => all.includes(word));
  };
}

/** By the standard's own reading of the name; else by its beginning, so that a name half typed finds something. */
function gradeFilter(
  text: string,
  own: readonly OwnStandard[],
): (entry: RulebookEntry, grade: string | null) => boolean {
  const wanted = text.trim();
  const read = new Map<string, string | null>();
  return (entry, grade) => {
    if (wanted === '') return true;
    if (grade === null) return false;
    if (!read.has(entry.id)) read.set(entry.id, gradeMeant(entry, wanted, own));
    const label = read.get(entry.id) ?? null;
    if (label === null) return grade.toLowerCase().startsWith(wanted.toLowerCase());
    return grade === label || grade.startsWith(`${label} `);
  };
}

function gradeMeant(entry: RulebookEntry, wanted: string, own: readonly OwnStandard[]): string | null {
  if (entry.id === 'grade-definition') return wanted.replace(/^g(rade)?\s*/i, '');
  try {
    return chooseGrade(chooseStandard(entry.id, own), wanted).label;
  } catch (error) {
    if (isInputError(error)) return null;
    throw error;
  }
}

function byRule(size: WantedSize, grade: string, own: readonly OwnStandard[]): readonly ListedSpecification[] {
  const { size_mm } = size;
  if (size_mm === null) return [];
  return rulebookIndex(own).flatMap((entry) => {
    const [least, greatest] = entry.anySizeWithin_mm ?? [1, 0];
    if (size_mm < least || size_mm > greatest) return [];
    return gradesAsked(entry, grade).flatMap((one) =>
      listed({ entry, grade: one, size_mm, tradeSize: null, isListed: false }, own),
    );
  });
}

/** The grade definition knows any number, so the one that was asked for is among its grades. */
function gradesAsked(entry: RulebookEntry, asked: string): readonly (string | null)[] {
  const number = /^g?(?:rade)?\s*(\d+(?:[.,]\d+)?)$/i.exec(asked.trim())?.[1];
  const grades = gradesOf(entry);
  if (entry.id !== 'grade-definition' || number === undefined || grades.includes(number)) return grades;
  return [...grades, number];
}

function gradesOf(entry: RulebookEntry): readonly (string | null)[] {
  return entry.grades.length === 0 ? [null] : entry.grades;
}

/** A row whose size no grade of the standard has by itself is left out of the list. */
function listed(
  head: Omit<ListedSpecification, 'specification'>,
  own: readonly OwnStandard[],
): readonly ListedSpecification[] {
  try {
    return [{ ...head, specification: specificationFor(requestOf(head, own)) }];
  } catch (error) {
    if (isInputError(error)) return [];
    throw error;
  }
}

function requestOf(
  head: Pick<ListedSpecification, 'entry' | 'grade' | 'size_mm' | 'tradeSize'>,
  own: readonly OwnStandard[],
): SpecificationRequest {
  const size = head.tradeSize === null ? { size_mm: head.size_mm } : { tradeSize: head.tradeSize };
  return { standard: head.entry.id, grade: head.grade ?? undefined, ...size, own };
}
