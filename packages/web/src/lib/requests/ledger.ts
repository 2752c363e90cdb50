import { useRecord } from '../use-record.ts';

export interface LedgerLine {
  readonly seq: number;
  readonly at: string;
  readonly who: string;
  readonly action: string;
  readonly kind: string;
  readonly record: string;
  readonly why: string | null;
  readonly hash: string;
}

export interface Ledger {
  readonly entries: readonly LedgerLine[];
  readonly verified: boolean;
}

/** The ledger of one campaign, oldest entry first. */
export function useLedger(code: string) {
  return useRecord<Ledger>(`/api/campaigns/${encodeURIComponent(code)}/ledger`);
}
