import { isInputError, type OwnStandard, type Specification, specificationFor } from '@provinghouse/core';

/** A claim as far as it is typed. */
export interface ClaimTyped {
  readonly specification: string;
  readonly grade: string;
  readonly size_mm: number | null;
}

export type SpecificationLookUp =
  | { readonly specification: Specification }
  | { readonly fault: string; readonly column: 'specification' | 'grade' | 'nominal_size_mm' }
  | null;

/** What the Rulebook asks of a claim; the column at fault where it holds nothing of the kind; null while the claim is not typed yet. */
export function lookUp(
  { specification, grade, size_mm }: ClaimTyped,
  own: readonly OwnStandard[],
): SpecificationLookUp {
  if (specification === '' || size_mm === null) return null;
  try {
    const named = grade.trim() === '' ? {} : { grade: grade.trim() };
    return { specification: specificationFor({ standard: specification, size_mm, ...named, own }) };
  } catch (error) {
    if (!isInputError(error)) throw error;
    const isOfStandard = error.code === 'chain/unknown-standard';
    const column = isOfStandard ? 'specification' : error.code.includes('grade') ? 'grade' : 'nominal_size_mm';
    return { fault: error.message, column };
  }
}

/** A size as typed; null for no number above zero. */
export function sizeTyped(typed: string): number | null {
  const size = Number(typed.trim().replace(',', '.'));
  return typed.trim() !== '' && Number.isFinite(size) && size > 0 ? size : null;
}
