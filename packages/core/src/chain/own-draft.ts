import { isInputError } from '../errors.ts';
import { tidy } from './bench-unit.ts';
import { ownStandardFaults } from './own-standard.ts';
import { ownTable } from './own-table.ts';
import { type Limit, type Quantity, quantityNames, quantityUnits, type Specification } from './specification.ts';
import { specificationFor } from './specification-for.ts';
import { type OwnStandard, standardId } from './standard-selection.ts';

export type LimitSide = 'lower' | 'nominal' | 'upper';

/** Which numbers an own specification can state for each quantity: those that its form of file holds. */
export const ownSides = {
  diameter: ['lower', 'upper'],
  weldDiameter: ['upper'],
  pitch: ['nominal', 'lower', 'upper'],
  innerWidth: ['lower'],
  outerWidth: ['upper'],
  outerLength: ['lower', 'upper'],
  lengthOverLinks: ['nominal', 'lower', 'upper'],
  breakingForce: ['lower'],
  proofForce: ['lower'],
  workingLoadLimit: ['nominal'],
  elongation: ['lower'],
  massPerMetre: ['nominal'],
  bendDeflection: ['lower'],
} as const satisfies Record<Quantity, readonly LimitSide[]>;

/** A limit of an own specification; all numbers null: it asks nothing of the quantity. */
export interface OwnLimit {
  readonly quantity: Quantity;
  readonly lower: number | null;
  readonly nominal: number | null;
  readonly upper: number | null;
  /** Where a limit that was changed, added or left out comes from; blank for one taken over as it stands. */
  readonly source: string;
}

/** An own specification of one size, made from an existing one. */
export interface OwnDraft {
  readonly name: string;
  readonly title: string;
  readonly edition: string;
  readonly grade: string | null;
  readonly limits: readonly OwnLimit[];
}

/** What is the matter with a draft, at a quantity or at one of its names. */
export interface DraftFault {
  readonly at: Quantity | 'name' | 'title' | 'edition' | 'grade' | 'whole';
  readonly words: string;
}

export interface OwnCopy {
  readonly limits: readonly OwnLimit[];
  /** What the existing specification asks and an own one cannot state, in words. */
  readonly lost: readonly string[];
}

/** The limits of an existing specification as a draft starts from them, one for every quantity. */
export function ownCopy(base: Specification): OwnCopy {
  const lost: string[] = [];
  const limits = Object.keys(ownSides).map((name): OwnLimit => {
    const quantity = name as Quantity; // the keys of `ownSides` are the quantities
    const limit = base.limits.find((one) => one.quantity === quantity);
    const kept = limit === undefined ? null : keptNumbers(limit);
    if (limit !== undefined && kept !== null && isLess(kept, limit)) lost.push(limit.statement);
    return { quantity, ...(kept ?? nothing), source: '' };
  });
  return { limits, lost };
}

/**
 * The own specification that a draft makes of an existing one: limits taken over keep their sources, doubts and notes; changed ones
 * rest on the source they name.
 *
 * @returns the specification, sound by the reader of own specifications and looked up again to see that it asks what the draft says;
 *   or every fault of the draft
 */
export function ownStandardFrom(
  base: Specification,
  draft: OwnDraft,
): { readonly standard: OwnStandard | null; readonly faults: readonly DraftFault[] } {
  const start = ownCopy(base).limits;
  const faults = [...nameFaults(draft), ...draft.limits.flatMap((limit) => limitFaults(limit, base, start))];
  if (draft.limits.every(isEmpty)) faults.push({ at: 'whole', words: 'It must ask for something: fill in one limit.' });
  if (faults.length > 0) return { standard: null, faults };
  const standard = written(base, draft);
  const unsound = ownStandardFaults(standard).map((words): DraftFault => ({ at: placeOf(words), words }));
  if (unsound.length > 0) return { standard: null, faults: unsound };
  const wrong = readBack(standard, base, draft);
  return wrong.length > 0 ? { standard: null, faults: wrong } : { standard, faults: [] };
}

const nothing = { lower: null, nominal: null, upper: null } as const;

type Numbers = Pick<OwnLimit, LimitSide>;

/** Numbers of a limit that an own specification can state; none where what is left would not be a limit of it. */
function keptNumbers(limit: Limit): Numbers {
  const sides: readonly LimitSide[] = ownSides[limit.quantity];
  const kept: Numbers = {
    lower: sides.includes('lower') ? limit.lower : null,
    nominal: sides.includes('nominal') ? limit.nominal : null,
    upper: sides.includes('upper') ? limit.upper : null,
  };
  const isOtherLength = limit.quantity === 'lengthOverLinks' && limit.links !== 11;
  return isOtherLength ? nothing : kept;
}

/** The nominal diameter is the size, which every own specification has. */
function isLess(kept: Numbers, limit: Limit): boolean {
  if (limit.quantity === 'diameter') return kept.lower !== limit.lower || kept.upper !== limit.upper;
  return kept.lower !== limit.lower || kept.upper !== limit.upper || kept.nominal !== limit.nominal;
}

function nameFaults({ name, title, edition }: OwnDraft): DraftFault[] {
  const faults: DraftFault[] = [];
  if (standardId(name) === '') faults.push({ at: 'name', words: 'Give it a name with letters or digits.' });
  if (title.trim() === '') faults.push({ at: 'title', words: 'Say in a line what it is for.' });
  if (edition.trim() === '') faults.push({ at: 'edition', words: 'Say which edition this is: a date will do.' });
  return faults;
}

function limitFaults(limit: OwnLimit, base: Specification, start: readonly OwnLimit[]): readonly DraftFault[] {
  const words: string[] = [];
  const { quantity, lower, nominal, upper } = limit;
  const given = [lower, nominal, upper].filter((value) => value !== null);
  if (given.some((value) => !Number.isFinite(value) || value <= 0)) words.push('Every number must be above 0.');
  if (given.some((value, index) => index > 0 && value < (given[index - 1] ?? 0)))
    words.push('The numbers must rise from the least to the greatest.');
  const need = needOf(limit, base.nominalSize_mm);
  if (need !== null) words.push(need);
  if (isChangedLimit(limit, start) && limit.source.trim() === '')
    words.push('It differs from the specification it was copied from: say where the change comes from.');
  return words.map((one) => ({ at: quantity, words: one }));
}

function needOf({ quantity, lower, nominal, upper }: OwnLimit, size_mm: number): string | null {
  const hasBound = lower !== null || upper !== null;
  if (quantity === 'diameter' && hasBound) {
    if (lower === null || upper === null) return 'Give the least and the greatest diameter, or neither.';
    if (lower >= size_mm || upper <= size_mm)
      return `The nominal size of ${size_mm} mm must lie between the least and the greatest diameter.`;
  }
  if ((quantity === 'pitch' || quantity === 'lengthOverLinks') && hasBound && nominal === null)
    return 'Give the nominal length too.';
  if (quantity === 'pitch' && (lower === null) !== (upper === null))
    return 'Give the least and the greatest pitch, or neither.';
  if (quantity === 'pitch' && lower !== null && upper !== null && nominal !== null && nominal >= upper)
    return 'The nominal pitch must lie below the greatest.';
  return null;
}

/** Whether a limit of a draft differs from the one it started from. */
export function isChangedLimit(limit: OwnLimit, start: readonly OwnLimit[]): boolean {
  const from = start.find(({ quantity }) => quantity === limit.quantity) ?? nothing;
  return from.lower !== limit.lower || from.nominal !== limit.nominal || from.upper !== limit.upper;
}

function isEmpty({ lower, nominal, upper }: Numbers): boolean {
  return lower === null && nominal === null && upper === null;
}

function written(base: Specification, draft: OwnDraft): OwnStandard {
  const start = ownCopy(base).limits;
  const left = draft.limits.filter((limit) => isEmpty(limit) && isChangedLimit(limit, start));
  const out = left.map(({ quantity, source }) => `${quantityNames[quantity]} (${source.trim()})`);
  const { table, sources } = ownTable({ base, draft, isChanged: (limit) => isChangedLimit(limit, start) });
  return {
    id: draft.name.trim(),
    title: draft.title.trim(),
    edition: draft.edition.trim(),
    range: [base.nominalSize_mm, base.nominalSize_mm],
    confidence: base.confidence === 'D' ? 'D' : 'C',
    confidenceWhy: [
      `Own specification made from ${base.title} (${base.edition}); each changed limit rests on the source it names.`,
      ...(out.length === 0 ? [] : [`Left out: ${out.join(', ')}.`]),
    ].join(' '),
    sources,
    rules: [],
    tables: [table],
  };
}

function placeOf(words: string): DraftFault['at'] {
  return words.startsWith('id:') ? 'name' : 'whole';
}

/** What the written specification asks, looked up as any other, against what the draft says. */
function readBack(standard: OwnStandard, base: Specification, draft: OwnDraft): readonly DraftFault[] {
  try {
    const read = specificationFor({
      standard: standard.id,
      grade: draft.grade ?? undefined,
      size_mm: base.nominalSize_mm,
      own: [standard],
    });
    return draft.limits.flatMap((limit) => {
      const found = read.limits.find(({ quantity }) => quantity === limit.quantity);
      const sides: readonly LimitSide[] = ownSides[limit.quantity];
      const isAsked = sides.every((side) => same(found?.[side] ?? null, limit[side]));
      if (isAsked) return [];
      const unit = quantityUnits[limit.quantity];
      return [{ at: limit.quantity, words: `These numbers cannot be stated together (${unit}).` }];
    });
  } catch (error) {
    if (isInputError(error)) return [{ at: 'grade', words: error.message }];
    throw error;
  }
}

function same(a: number | null, b: number | null): boolean {
  return a === null || b === null ? a === b : tidy(a) === tidy(b);
}
