import { type AddressCodec, queryPart } from '../../lib/use-address-state.ts';

/** Two specifications by their keys, either of which may still be open. */
export interface ComparisonState {
  readonly first: string | null;
  readonly second: string | null;
  readonly onlyDifferences: boolean;
}

/** `first`, `second`, and `only=differences` in the query of an address. */
export const comparisonAddress: AddressCodec<ComparisonState> = {
  read: (search) => {
    const query = new URLSearchParams(search);
    return {
      first: query.get('first'),
      second: query.get('second'),
      onlyDifferences: query.get('only') === 'differences',
    };
  },
  write: ({ first, second, onlyDifferences }) =>
    [
      ...(first === null ? [] : [queryPart('first', first)]),
      ...(second === null ? [] : [queryPart('second', second)]),
      ...(onlyDifferences ? [queryPart('only', 'differences')] : []),
    ].join('&'),
};
