import { readAt } from '../api/address.ts';
import { useRecord } from '../use-record.ts';

/** The ledger of one campaign, oldest entry first. */
export function useLedger(code: string) {
  return useRecord(readAt('/api/campaigns/{code}/ledger', { path: { code } }));
}
