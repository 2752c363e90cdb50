import { readAt } from '../api/address.ts';
import { bench } from '../entry/book.ts';
import { useRecord } from '../use-record.ts';

export interface LedgerAsked {
  /** Only entries before this one. */
  readonly before?: number;
  readonly limit: number;
  /** Words that must all stand in an entry. */
  readonly search?: string;
  /** Kinds of record, parted by commas. */
  readonly kinds?: string;
}

/** Entries of the ledger of a campaign or of the bench, the newest first. */
export function useLedger(book: string, query: LedgerAsked) {
  return useRecord(
    book === bench
      ? readAt('/api/bench/ledger', { query })
      : readAt('/api/campaigns/{code}/ledger', { path: { code: book }, query }),
  );
}

/** Whether the ledger of a campaign or of the bench is whole. */
export function useLedgerState(book: string) {
  return useRecord(
    book === bench
      ? readAt('/api/bench/ledger/state')
      : readAt('/api/campaigns/{code}/ledger/state', { path: { code: book } }),
  );
}
