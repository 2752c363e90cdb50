export { addRecords, type RecordsToAdd } from './add.ts';
export { benchBook, openBenchBook } from './bench-book.ts';
export { readBlob, writeBlob } from './blob.ts';
export { type BroughtIn, bringInCampaign, type CampaignToBringIn } from './bring-in.ts';
export {
  type Attachment,
  attachments,
  type CampaignContent,
  campaignCodes,
  campaignContent,
  campaignRows,
} from './campaign.ts';
export { canonicalJson, type Json, sha256 } from './canonical.ts';
export { contentHash } from './content.ts';
export type { Database } from './database.ts';
export { isStoreError, StoreError, type StoreErrorCode } from './errors.ts';
export { emptyHead, entryHash, type LedgerEntry, type LedgerPage, ledgerEntries, ledgerHead } from './ledger.ts';
export {
  countEntries,
  type EntriesAsked,
  type EntryOf,
  lastEntryOf,
  type NewestAsked,
  newestEntries,
} from './ledger-newest.ts';
export { mediaOf } from './media.ts';
export { openStore, recordName, type Store } from './open.ts';
export { type Revised, type Revision, type RevisionOf, reviseRecord } from './revise.ts';
export { heldRow, heldRows } from './rows.ts';
export { type LedgerCheck, verifyLedger } from './verify.ts';
export { withdrawn, withdrawRecord } from './withdraw.ts';
