/** One entry of a campaign's ledger, without the values before and after. */
export interface LedgerLine {
  readonly seq: number;
  /** When it was written, ISO 8601. */
  readonly at: string;
  readonly who: string;
  readonly action: string;
  /** The kind of record written: a table of the data package, or `attachment`. */
  readonly kind: string;
  readonly record: string;
  readonly why: string;
  readonly hash: string;
}

/** The whole ledger of a campaign, oldest entry first. */
export interface Ledger {
  readonly entries: readonly LedgerLine[];
  /** True when every hash follows from its entry and the one before, and everything kept agrees with it. */
  readonly verified: boolean;
  /** Hash of the last entry. */
  readonly head: string;
}
