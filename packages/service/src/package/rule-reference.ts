import { nearest, type Sheet } from '@provinghouse/contract';
import { isInputError, type OwnStandard, rulebookIndex, sizesFor } from '@provinghouse/core';
import type { PackageFault } from './fault.ts';

/** Products that claim a specification which neither the rulebook nor the package holds. */
export function ruleFaults(file: string, products: Sheet | undefined, own: readonly OwnStandard[]): PackageFault[] {
  return (products?.rows ?? []).flatMap(({ row, cells }) => {
    const { specification } = cells;
    if (typeof specification !== 'string') return [];
    if (isKnown(specification, own)) return [];
    const known = rulebookIndex(own).map(({ id }) => id);
    const near = nearest(specification, known);
    const cure = near
      ? `the nearest is "${near}"`
      : `write one of ${known.join(', ')}, or add your own below specifications/`;
    return [
      { file, row, column: 'specification', fault: `names "${specification}", which is not in the rulebook; ${cure}` },
    ];
  });
}

/** A size or grade that a known standard does not list is no fault here: judging says what cannot be judged. */
function isKnown(standard: string, own: readonly OwnStandard[]): boolean {
  try {
    sizesFor({ standard, own });
    return true;
  } catch (error) {
    if (!isInputError(error)) throw error;
    return error.code !== 'chain/unknown-standard';
  }
}
