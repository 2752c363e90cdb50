import { InputError } from '../errors.ts';
import { tidy } from './bench-unit.ts';
import { breakingForce_kN } from './grade-formula.ts';
import { limitStatement } from './limit-statement.ts';
import { provenanceOf } from './provenance.ts';
import { rulebook } from './rulebook.ts';
import type { Specification } from './specification.ts';

/** Id under which the definition of a grade can be looked up like a standard. */
export const gradeDefinitionId = 'grade-definition';

const edition = 'definition common to EN 818, ISO 1834 and ASTM A413/A391/A973';

const note =
  'the definition alone, unrounded: no dimensions, proof force, working load limit or elongation; a product standard may print a rounded force';

/** The grade number in a text: `30`, `grade 30`, `G30`. */
export function parseGradeNumber(grade: string | undefined): number {
  const digits = /^(?:grade|g)?\s*(\d+(?:[.,]\d+)?)$/i.exec(grade?.trim() ?? '')?.[1];
  if (digits !== undefined) return Number(digits.replace(',', '.'));
  throw new InputError(
    'chain/grade-number',
    `The grade definition needs the grade as a number, a tenth of the stress in N/mm2 (30, 40, 80 ...), not "${grade ?? ''}".`,
    { grade: grade ?? null },
  );
}

/**
 * The grade definition itself, for any size: breaking force = 10 x grade x both legs' nominal area. It is the yardstick
 * for chain that carries a grade mark but no standard.
 *
 * @param wanted grade as a tenth of the mean stress at the minimum breaking force (20 to 150), and nominal size in mm
 * @throws InputError `chain/grade-number` or `chain/size-invalid`
 */
export function gradeSpecification(wanted: { readonly grade: number; readonly size_mm: number }): Specification {
  const { grade, size_mm } = wanted;
  requireGrade(grade);
  requireSize(size_mm);
  const stress = grade * 10;
  const numbers = { lower: tidy(breakingForce_kN(stress, size_mm)), upper: null, nominal: null, links: null };
  return {
    title: `grade definition, grade ${grade}, ${size_mm} mm`,
    standard: gradeDefinitionId,
    edition,
    grade: `${grade}`,
    nominalSize_mm: size_mm,
    confidence: 'A',
    gradeStress_N_per_mm2: stress,
    limits: [
      {
        quantity: 'breakingForce',
        unit: 'kN',
        ...numbers,
        statement: limitStatement('breakingForce', numbers),
        standard: gradeDefinitionId,
        edition,
        place: 'formula breakingForce',
        provenance: provenanceOf({
          ids: ['f-bf', 'p-en818-defs', 'p-astm-a413-21', 'p-grade-guide'],
          sources: rulebook.sources,
          crossChecked: true,
          notes: [`mean stress ${stress} N/mm2 over both legs at the minimum breaking force`, note],
        }),
      },
    ],
  };
}

/** A grade outside these is a slip: 8 or 300 where 80 or 30 is meant. */
function requireGrade(grade: number): void {
  if (Number.isFinite(grade) && grade >= 20 && grade <= 150) return;
  throw new InputError(
    'chain/grade-number',
    `A grade number is a tenth of the mean stress in N/mm2 and lies between 20 and 150 (grade 8 is 80): not ${grade}.`,
    { grade },
  );
}

function requireSize(size_mm: number): void {
  if (Number.isFinite(size_mm) && size_mm > 0) return;
  throw new InputError('chain/size-invalid', `A nominal size must be a number of mm above 0, not ${size_mm}.`, {
    size_mm,
  });
}
