import { nearest, type Sheet } from '@provinghouse/contract';
import { isInputError, type OwnStandard, rulebookIndex, specificationFor } from '@provinghouse/core';
import type { PackageFault } from './fault.ts';

/** Products whose specification, grade and size the rulebook and the package's own specifications do not hold together. */
export function ruleFaults(file: string, products: Sheet | undefined, own: readonly OwnStandard[]): PackageFault[] {
  return (products?.rows ?? []).flatMap(({ row, cells }) => {
    const { specification, nominal_size_mm, grade } = cells;
    if (typeof specification !== 'string' || typeof nominal_size_mm !== 'number') return [];
    const claim = { standard: specification, size_mm: nominal_size_mm, own };
    const missing = missingRule(typeof grade === 'string' ? { ...claim, grade } : claim);
    return missing ? [{ file, row, ...missing }] : [];
  });
}

type Missing = Pick<PackageFault, 'column' | 'fault'>;

function missingRule(claim: Parameters<typeof specificationFor>[0]): Missing | null {
  try {
    specificationFor(claim);
    return null;
  } catch (error) {
    if (!isInputError(error)) throw error;
    if (error.code === 'chain/unknown-standard') return { column: 'specification', fault: unknownStandard(claim) };
    return {
      column: error.code.includes('grade') ? 'grade' : 'nominal_size_mm',
      fault: `does not fit the rulebook. ${error.message}`,
    };
  }
}

function unknownStandard({ standard, own }: Parameters<typeof specificationFor>[0]): string {
  const known = rulebookIndex(own).map(({ id }) => id);
  const near = nearest(standard, known);
  const cure = near
    ? `the nearest is "${near}"`
    : `write one of ${known.join(', ')}, or add your own below specifications/`;
  return `names "${standard}", which is not in the rulebook; ${cure}`;
}
