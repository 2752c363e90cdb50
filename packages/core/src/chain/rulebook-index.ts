import { gradeDefinitionId } from './grade-definition.ts';
import { chooseGrade, gradesOf } from './grade-selection.ts';
import { rulebook, type StandardEntry } from './rulebook.ts';
import { coversRange, type ListedSize, listedSizes } from './size-selection.ts';
import { chooseStandard, type OwnStandard, standardId } from './standard-selection.ts';

/** One line of the rulebook's list. */
export interface RulebookEntry {
  readonly id: string;
  readonly standard: string;
  readonly title: string;
  readonly edition: string;
  /** Empty where the standard has no grades; any grade number for the grade definition. */
  readonly grades: readonly string[];
  /** Sizes its tables list, over all grades; US trade sizes carry their designation. */
  readonly sizes: readonly ListedSize[];
  /** Set where any size in this range can be looked up, by rule; null where only the listed ones can. */
  readonly anySizeWithin_mm: readonly [number, number] | null;
  /** A to D; see `rulebook.conventions.confidence`. */
  readonly confidence: string;
  readonly why: string;
  readonly isOwn: boolean;
}

/** Everything that can be looked up: the grade definition, the published standards, and own specifications. */
export function rulebookIndex(own: readonly OwnStandard[] = []): readonly RulebookEntry[] {
  return [
    definitionEntry(),
    ...rulebook.standards.map((entry) => indexEntry(entry, false)),
    ...own.map((entry) => indexEntry(entry, true)),
  ];
}

/** The sizes that the tables list for one grade of a standard; empty where sizes go by rule or definition alone. */
export function sizesFor(wanted: {
  readonly standard: string;
  readonly grade?: string | undefined;
  readonly own?: readonly OwnStandard[] | undefined;
}): readonly ListedSize[] {
  if (standardId(wanted.standard) === gradeDefinitionId) return [];
  const standard = chooseStandard(wanted.standard, wanted.own);
  return listedSizes(standard, chooseGrade(standard, wanted.grade));
}

function indexEntry(entry: StandardEntry, isOwn: boolean): RulebookEntry {
  const standard = { entry, sources: rulebook.sources, isOwn };
  return {
    id: standardId(entry.id),
    standard: entry.id,
    title: entry.title,
    edition: entry.edition,
    grades: gradesOf(entry),
    sizes: listedSizes(standard, null),
    anySizeWithin_mm: coversRange(standard) ? entry.range : null,
    confidence: entry.confidence,
    why: entry.confidenceWhy,
    isOwn,
  };
}

function definitionEntry(): RulebookEntry {
  const { rows } = rulebook.general.gradeStress;
  return {
    id: gradeDefinitionId,
    standard: gradeDefinitionId,
    title: 'The grade definition: mean stress over both legs at the minimum breaking force',
    edition: 'any size and grade',
    grades: [...new Set([30, 43, 70, ...rows.flatMap(({ value }) => (value === null ? [] : [value / 10]))])]
      .sort((a, b) => a - b)
      .map(String),
    sizes: [],
    anySizeWithin_mm: [2, 200],
    confidence: 'A',
    why: 'The definition is on several public pages and reproduces the EN 818-3 table exactly.',
    isOwn: false,
  };
}
