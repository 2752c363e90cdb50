import {
  isInputError,
  type ListedSpecification,
  listSpecifications,
  type OwnStandard,
  type RulebookEntry,
  rulebookIndex,
  type Specification,
  specificationFor,
} from '@provinghouse/core';
import { keyText, readKey, requestFor, type SpecificationKey } from '../../lib/specification-key.ts';
import { text } from '../../lib/text.ts';

/** A specification that an address names, or why there is none. */
export type LookedUp =
  | {
      readonly key: SpecificationKey;
      readonly specification: Specification;
      readonly entry: RulebookEntry;
      readonly fault: null;
    }
  | {
      readonly key: SpecificationKey | null;
      readonly specification: null;
      readonly entry: null;
      readonly fault: string;
    };

/** Looks up what the text of an address names. */
export function lookUp(of: string | null, own: readonly OwnStandard[]): LookedUp {
  const key = readKey(of);
  if (key === null) return { key, specification: null, entry: null, fault: text.rulebook.noKey };
  try {
    const specification = specificationFor({ ...requestFor(key), own });
    const entry = rulebookIndex(own).find(({ standard }) => standard === specification.standard);
    if (entry === undefined) return { key, specification: null, entry: null, fault: text.rulebook.unknown };
    return { key, specification, entry, fault: null };
  } catch (error) {
    if (isInputError(error)) return { key, specification: null, entry: null, fault: error.message };
    throw error;
  }
}

/** The key of a line of the list. */
export function keyOf({ entry, grade, size_mm, tradeSize }: ListedSpecification): string {
  return keyText({ standard: entry.id, grade, size_mm, tradeSize });
}

let last: { readonly own: readonly OwnStandard[]; readonly list: readonly ListedSpecification[] } | null = null;

/** Every specification there is; worked out anew only when the own ones change. */
export function everySpecification(own: readonly OwnStandard[]): readonly ListedSpecification[] {
  if (last === null || last.own !== own) last = { own, list: listSpecifications(own) };
  return last.list;
}
