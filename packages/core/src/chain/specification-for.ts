import type { LengthClass } from './choice.ts';
import { gradeDefinitionId, gradeSpecification, parseGradeNumber } from './grade-definition.ts';
import { chooseGrade, type GradeChoice } from './grade-selection.ts';
import { limitsOf } from './limit-assembly.ts';
import { withMarks } from './provenance.ts';
import { rulebook, type StandardEntry } from './rulebook.ts';
import { chooseSize, type SizeChoice } from './size-selection.ts';
import type { Limit, Specification } from './specification.ts';
import { chooseStandard, type OwnStandard, standardId } from './standard-selection.ts';

/** What to look up. */
export interface SpecificationRequest {
  /** Id or name: `en-818-3`, `EN 818-3`, `grade-definition`. */
  readonly standard: string;
  /** May be left out only where the standard has one grade or none. Mooring chain: `R3 stud`, `R3 studless`. */
  readonly grade?: string | undefined;
  readonly size_mm?: number | undefined;
  /** US trade size instead of the size in mm: `3/8`, `1-1/4`. */
  readonly tradeSize?: string | undefined;
  /** Tolerance class of the length over 11 links where there are two (DIN 764): the wider B unless A is asked for. */
  readonly lengthClass?: LengthClass | undefined;
  readonly own?: readonly OwnStandard[] | undefined;
}

/**
 * All that a standard asks of one size and grade: each limit in bench units with its place in the rulebook, its sources
 * and its doubts. A value comes from the tables where they have a row for the size, else from the rules; a quantity the
 * rulebook knows nothing of is simply absent.
 *
 * @throws InputError for an unknown standard, grade or size, listing what there is
 */
export function specificationFor(request: SpecificationRequest): Specification {
  if (standardId(request.standard) === gradeDefinitionId) {
    return gradeSpecification({ grade: parseGradeNumber(request.grade), size_mm: request.size_mm ?? Number.NaN });
  }
  const standard = chooseStandard(request.standard, request.own);
  const grade = chooseGrade(standard, request.grade);
  const size = chooseSize(standard, grade, request);
  const limits = limitsOf({ standard, grade, size, lengthClass: request.lengthClass ?? 'B' });
  const { entry } = standard;
  return {
    title: titleOf(entry, grade, size),
    standard: entry.id,
    edition: entry.edition,
    grade: grade.label,
    nominalSize_mm: size.size_mm,
    confidence: entry.confidence,
    gradeStress_N_per_mm2: standard.isOwn ? null : gradeStress(entry, grade),
    limits: limits.map((limit) => marked(limit, grade, size)),
  };
}

function titleOf(entry: StandardEntry, grade: GradeChoice, size: SizeChoice): string {
  const gradePart = grade.label === null ? '' : `, grade ${grade.label}`;
  const sizePart = size.tradeSize === null ? `${size.size_mm} mm` : `${size.tradeSize} in (${size.size_mm} mm)`;
  return `${entry.id}${gradePart}, ${sizePart}`;
}

/** Notes that concern the whole choice: a size the tables do not list, a form of link left open. */
function marked(limit: Limit, grade: GradeChoice, size: SizeChoice): Limit {
  const notes: string[] = [];
  if (size.rows.length === 0) notes.push('this size is not in the tables here: the value is by rule');
  if (grade.isFormOpen && limit.quantity === 'breakingForce') {
    notes.push(`proof force and mass may depend on the form: ask for "${grade.base} stud" or "${grade.base} studless"`);
  }
  if (notes.length === 0) return limit;
  return { ...limit, provenance: withMarks(limit.provenance, { note: notes.join('; ') }) };
}

/** Standards whose grade is defined as a mean stress, and how their grade names are read. */
const definedByStress: Readonly<Record<string, 'class' | 'tenth'>> = {
  'EN 818-2': 'class',
  'EN 818-3': 'class',
  'EN 818-7': 'class',
  'ISO 3075 series': 'class',
  'PAS 1061': 'class',
  'ASTM A413/A413M': 'tenth',
  'ASTM A391/A391M': 'tenth',
  'ASTM A973/A973M': 'tenth',
};

function gradeStress(entry: StandardEntry, grade: GradeChoice): number | null {
  const reading = definedByStress[entry.id];
  if (reading === undefined || grade.base === null) return null;
  if (reading === 'tenth') return Number(grade.base) * 10;
  // The three hoist types are all grade T.
  const name = entry.id === 'EN 818-7' ? 'T' : grade.base;
  return rulebook.general.gradeStress.rows.find((row) => row.medium === name || row.fine === name)?.value ?? null;
}
