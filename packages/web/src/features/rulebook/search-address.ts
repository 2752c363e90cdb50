import { type Quantity, quantityNames, type SpecificationSearch } from '@provinghouse/core';
import { type AddressCodec, queryPart } from '../../lib/use-address-state.ts';

/** A search, and the specification that is waiting for a second to be compared with. */
export interface RulebookSearch extends SpecificationSearch {
  readonly compareWith: string | null;
}

export const emptySearch: RulebookSearch = { words: '', grade: '', size: '', quantity: null, compareWith: null };

/** The search in the query of an address: `words`, `grade`, `size`, `limits`, `with`. */
export const searchAddress: AddressCodec<RulebookSearch> = {
  read: (search) => {
    const query = new URLSearchParams(search);
    return {
      words: query.get('words') ?? '',
      grade: query.get('grade') ?? '',
      size: query.get('size') ?? '',
      quantity: readQuantity(query.get('limits')),
      compareWith: query.get('with'),
    };
  },
  write: ({ words, grade, size, quantity, compareWith }) => {
    const parts = { words, grade, size, limits: quantity ?? '', with: compareWith ?? '' };
    return Object.entries(parts)
      .flatMap(([name, value]) => (value.trim() === '' ? [] : [queryPart(name, value)]))
      .join('&');
  },
};

function readQuantity(text: string | null): Quantity | null {
  if (text === null || !Object.hasOwn(quantityNames, text)) return null;
  return text as Quantity; // a key of the names is a quantity
}
