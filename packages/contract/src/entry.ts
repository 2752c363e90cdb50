import type { Row, TableName } from './package/tables.ts';

/** A file sent before the rows that name it: where it shall stand in the campaign, and what it is. */
export interface FileEntry {
  /** Path in the campaign, e.g. `traces/P-001.csv`. */
  readonly path: string;
  /** As the answer to the sending of its bytes said. */
  readonly sha256: string;
}

/** Rows to be kept together: all or none. Sending the same rows again changes nothing, so a client may send again when no answer came. */
export interface EntryRequest {
  readonly rows: { readonly [T in Exclude<TableName, 'campaign'>]?: readonly Row<T>[] };
  readonly files?: readonly FileEntry[];
  /** Short name of who enters them. */
  readonly who: string;
  /** The reason, where one is needed: after the plan was frozen. */
  readonly why?: string | null;
  /** Why an instrument without a certificate in force was used all the same. */
  readonly override?: string | null;
}

export interface CorrectionRequest<T extends TableName = TableName> {
  readonly kind: T;
  readonly id: string;
  /** The revision the correction was made from. */
  readonly revision: number;
  /** The whole row as it should stand. */
  readonly body: Row<T>;
  readonly who: string;
  readonly why: string;
}

export interface WithdrawalRequest {
  readonly kind: TableName;
  readonly id: string;
  readonly revision: number;
  readonly who: string;
  readonly why: string;
}

/** A step of a campaign that is taken once: freezing its plan, unblinding it. */
export interface StepRequest {
  readonly who: string;
  readonly why: string;
}

export interface CommissionRequest {
  readonly campaign: Row<'campaign'>;
  readonly who: string;
}

/** The record's word that something is kept: given only when the ledger has it. */
export interface Kept {
  /** Place of the last entry in the ledger of the campaign. */
  readonly ledgerSeq: number;
}

export interface KeptRevision extends Kept {
  readonly revision: number;
}

/** The bytes of a file are here, and wait for the row that names them. */
export interface HeldFile {
  readonly sha256: string;
  readonly size: number;
}

/** A row as kept, with the revision a change must name. */
export interface RowHeld<T extends TableName = TableName> {
  readonly id: string;
  readonly revision: number;
  /** When it was written last, and by whom. */
  readonly at: string;
  readonly who: string;
  readonly body: Row<T>;
}

export interface RowsHeld<T extends TableName = TableName> {
  readonly rows: readonly RowHeld<T>[];
  /** What to ask the next page with, as `after`; null at the end. */
  readonly next: number | null;
}

/** A file of a campaign. */
export interface FileHeld {
  readonly path: string;
  readonly sha256: string;
  readonly size: number;
  readonly media: string;
}

export interface FilesHeld {
  readonly files: readonly FileHeld[];
  /** What to ask the next page with, as `after`; null at the end. */
  readonly next: string | null;
}
