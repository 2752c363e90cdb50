import type { Ledger } from '@provinghouse/contract';
import { useRecord } from '../use-record.ts';

/** The ledger of one campaign, oldest entry first. */
export function useLedger(code: string) {
  return useRecord<Ledger>(`/api/campaigns/${encodeURIComponent(code)}/ledger`);
}
