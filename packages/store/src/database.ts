import type { Kysely, Transaction } from 'kysely';

export interface CampaignTable {
  code: string;
  brought_in_at: string;
  /** SHA-256 of the content as first brought in, see content.ts. */
  content_sha256: string;
  /** The last entry of the campaign's ledger. */
  head_seq: number;
  head_hash: string;
}

export interface RecordTable {
  campaign: string;
  /** Name of a table of the data package. */
  kind: string;
  /** Key of the row within its table. */
  id: string;
  /** Place of the row among its kind, from 0. */
  position: number;
  /** 1 as brought in; one more with each correction. */
  revision: number;
  /** Canonical JSON. */
  body: string;
  /** The entry that made this revision. */
  ledger_seq: number;
}

export interface LedgerTable {
  campaign: string;
  /** 1, 2, 3 ... without gaps in each campaign. */
  seq: number;
  at: string;
  who: string;
  action: string;
  kind: string;
  record: string;
  why: string;
  /** Canonical JSON before and after the change; null where there was nothing before. */
  before: string | null;
  after: string;
  previous_hash: string;
  hash: string;
}

export interface BlobTable {
  sha256: string;
  /** Of the whole blob. */
  size: number;
  /** The whole blob, or its first part where it is kept in parts. */
  bytes: Uint8Array;
}

/** A further part of a blob; until the row of the blob is there, it is no part of the record. */
export interface BlobPartTable {
  sha256: string;
  /** 1, 2, 3 ... */
  place: number;
  bytes: Uint8Array;
}

export interface AttachmentTable {
  campaign: string;
  path: string;
  sha256: string;
  media: string;
}

export interface MigrationTable {
  name: string;
}

export interface Tables {
  migration: MigrationTable;
  campaign: CampaignTable;
  record: RecordTable;
  ledger: LedgerTable;
  blob: BlobTable;
  blob_part: BlobPartTable;
  attachment: AttachmentTable;
}

/** The record, open; inside a transaction the same functions take the transaction. */
export type Database = Kysely<Tables> | Transaction<Tables>;
