import {
  isInputError,
  type Limit,
  type OwnStandard,
  type Quantity,
  type Specification,
  specificationFor,
} from '@provinghouse/core';
import { readKey, requestFor } from '../../lib/specification-key.ts';
import type { ChainAtHand } from './sheet.ts';

/** What the chain at hand gives, by the meaning of the field that takes it. */
export interface ChainValues {
  readonly specification: Specification | null;
  readonly values: Readonly<Record<string, number>>;
  /** The limit in question; null where the specification has none for the quantity. */
  readonly limit: Limit | null;
  readonly fault: string | null;
}

/** Looks the chain up; an unknown one tells what is the matter and gives nothing. */
export function chainValues(chain: ChainAtHand, own: readonly OwnStandard[]): ChainValues {
  const key = readKey(chain.key);
  if (key === null) return { specification: null, values: {}, limit: null, fault: chain.key };
  try {
    const specification = specificationFor({ ...requestFor(key), own });
    const limit = specification.limits.find(({ quantity }) => quantity === chain.requirement) ?? null;
    return { specification, values: valuesOf(specification, limit), limit, fault: null };
  } catch (error) {
    if (isInputError(error)) return { specification: null, values: {}, limit: null, fault: error.message };
    throw error;
  }
}

function valuesOf(specification: Specification, limit: Limit | null): Readonly<Record<string, number>> {
  const of = (quantity: Quantity) => specification.limits.find((one) => one.quantity === quantity);
  const { gradeStress_N_per_mm2: stress, nominalSize_mm } = specification;
  const given: readonly (readonly [string, number | null | undefined])[] = [
    ['size_mm', nominalSize_mm],
    ['grade', stress === null ? null : stress / 10],
    ['pitch_mm', of('pitch')?.nominal],
    ['innerWidth_mm', of('innerWidth')?.lower],
    ['minimumForce_kN', of('breakingForce')?.lower],
    ['lowerLimit', limit?.lower],
    ['upperLimit', limit?.upper],
  ];
  return Object.fromEntries(given.flatMap(([key, value]) => (typeof value === 'number' ? [[key, value]] : [])));
}
