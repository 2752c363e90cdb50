/** One cell that an entry of the ledger changed. */
export interface LedgerChange {
  readonly cell: string;
  /** Null where there was nothing before. */
  readonly before: string | null;
  /** Null where the row was taken out. */
  readonly after: string | null;
}

/** One entry of a book's ledger. */
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
  /** The cells it filled or changed. Null while they are hidden because the campaign is blind. */
  readonly changes: readonly LedgerChange[] | null;
}

/** Entries of a book's ledger, the newest first. */
export interface LedgerPage {
  readonly entries: readonly LedgerLine[];
  /** How many entries were found in all. */
  readonly found: number;
  /** What to ask the next page with, as `before`; null at the end. */
  readonly next: number | null;
}

/** Whether a book's ledger is whole. */
export interface LedgerState {
  /** True when every hash follows from its entry and the one before, and everything kept agrees with it. */
  readonly verified: boolean;
  readonly entries: number;
  /** Hash of the last entry. */
  readonly head: string;
  /** What does not agree, in words. */
  readonly disagreements: readonly string[];
}
