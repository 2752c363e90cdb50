import { InputError } from '../errors.ts';
import { rulebook, type StandardEntry } from './rulebook.ts';
import type { ChosenStandard } from './standard-selection.ts';

export type LinkForm = 'stud' | 'studless';

/** A grade as chosen: its label, the name its columns carry, and the form of link where the grade has two. */
export interface GradeChoice {
  readonly label: string | null;
  readonly base: string | null;
  readonly form: LinkForm | null;
  /** The grade comes with and without stud, and the form was left open. */
  readonly isFormOpen: boolean;
}

/** Hoist chain of grade T comes in three types with different elongation and stress at WLL (EN 818-7). */
export const hoistTypes: readonly string[] = ['T', 'DAT', 'DT'];

const hoistStandard = 'EN 818-7';

/** The grades of a standard, in the order of its file; with `stud` or `studless` where that makes a difference. */
export function gradesOf(entry: StandardEntry): readonly string[] {
  const bases = basesOf(entry);
  return hasForms(entry) ? bases.flatMap((base) => [`${base} stud`, `${base} studless`]) : bases;
}

/**
 * The grade meant by `grade`: as the standard writes it, or as its letter, its number or ten times its number (T, 8 and
 * 80 are one grade). It may be left out only where the standard has one grade or none.
 *
 * @throws InputError `chain/unknown-grade` or `chain/grade-missing`, listing the grades there are
 */
export function chooseGrade(standard: ChosenStandard, grade: string | undefined): GradeChoice {
  const { entry } = standard;
  const bases = basesOf(entry);
  if (grade === undefined || grade.trim() === '') return onlyGrade(entry, bases);
  if (bases.length === 0) {
    throw new InputError('chain/unknown-grade', `${entry.id} has no grades: leave the grade out (it was "${grade}").`, {
      grade,
      choices: [],
    });
  }
  const form = formIn(grade);
  const base = matchBase(grade.replace(/\b(stud[- ]?less|stud([- ]?link)?)\b/i, ''), bases, standard);
  if (base === null || (form !== null && !hasForms(entry))) {
    const choices = gradesOf(entry);
    throw new InputError('chain/unknown-grade', `${entry.id} has no grade "${grade}". It has: ${choices.join(', ')}.`, {
      grade,
      choices,
    });
  }
  return {
    label: form === null ? base : `${base} ${form}`,
    base,
    form,
    isFormOpen: hasForms(entry) && form === null,
  };
}

function onlyGrade(entry: StandardEntry, bases: readonly string[]): GradeChoice {
  const [first, second] = bases;
  if (second === undefined)
    return { label: first ?? null, base: first ?? null, form: null, isFormOpen: hasForms(entry) };
  const choices = gradesOf(entry);
  throw new InputError('chain/grade-missing', `Say which grade of ${entry.id}: ${choices.join(', ')}.`, { choices });
}

function basesOf(entry: StandardEntry): readonly string[] {
  if (entry.id === hoistStandard) return hoistTypes;
  const named = [
    ...entry.tables.flatMap((table) => [table.grade, ...Object.values(table.columns).map((column) => column.grade)]),
    ...entry.rules.flatMap((rule) => [rule.grade, ...Object.keys(rule.coefficients ?? {})]),
  ];
  return [...new Set(named.flatMap((grade) => (grade === undefined ? [] : grade.split(' and '))))];
}

/** Mooring chain has a proof coefficient for each form of link. */
function hasForms(entry: StandardEntry): boolean {
  return entry.rules.some((rule) => Object.values(rule.coefficients ?? {}).some((k) => 'proofStud' in k));
}

function formIn(grade: string): LinkForm | null {
  if (/stud[- ]?less/i.test(grade)) return 'studless';
  return /stud/i.test(grade) ? 'stud' : null;
}

function matchBase(grade: string, bases: readonly string[], standard: ChosenStandard): string | null {
  const wanted = plainGrade(grade);
  const exact = bases.find((base) => plainGrade(base) === wanted);
  if (exact !== undefined) return exact;
  // Grades 1 to 3 of stud-link cable and R-grades are scales of their own: their 3 is not the 3 (L, 30) of chain grades.
  if (standard.isOwn || standard.entry.id.startsWith('IACS')) return null;
  const aliases = aliasesOf(wanted);
  return bases.find((base) => aliases.includes(plainGrade(base))) ?? null;
}

function plainGrade(grade: string): string {
  return grade
    .toLowerCase()
    .replace(/\bgrade\b/, '')
    .replaceAll(/[\s()]/g, '')
    .replace(/^g(?=\d)/, '');
}

function aliasesOf(plain: string): readonly string[] {
  for (const { fine, medium } of rulebook.general.gradeStress.rows) {
    const names = [fine.toLowerCase(), medium, `${medium}0`, `${fine.toLowerCase()}${medium}`];
    if (names.includes(plain)) return names;
  }
  return [];
}
