import type {
  CommissionRequest,
  CorrectionRequest,
  EntryRequest,
  HeldFile,
  Kept,
  KeptRevision,
  RowsHeld,
  StepRequest,
  TableName,
  WithdrawalRequest,
} from '@provinghouse/contract';
import type { Effects } from '@provinghouse/service';
import {
  commission,
  correctRow,
  enterRows,
  type FileRead,
  freezePlan,
  holdFile,
  type PageAsked,
  readFileOf,
  rowsHeld,
  unblind,
  withdrawRow,
} from '@provinghouse/service/entry';

/**
 * What the server writes, and the rows as they are entered. A book is a campaign or the book of the bench. What is refused is an InputError or
 * a StoreError; an answer means that the ledger has it.
 */
export interface EntryPorts {
  commission(request: CommissionRequest): Promise<Kept>;
  enter(book: string, request: EntryRequest): Promise<Kept>;
  correct(book: string, request: CorrectionRequest): Promise<KeptRevision>;
  withdraw(book: string, request: WithdrawalRequest): Promise<Kept>;
  freeze(campaign: string, request: StepRequest): Promise<KeptRevision>;
  unblind(campaign: string, request: StepRequest): Promise<KeptRevision>;
  rows(book: string, kind: TableName, page: PageAsked): Promise<RowsHeld>;
  hold(bytes: Uint8Array): Promise<HeldFile>;
  file(book: string, path: string): Promise<FileRead>;
}

/** The ports of a server that writes into the record. */
export function entryPorts(effects: Effects): EntryPorts {
  return {
    commission: (request) => commission(request, effects),
    enter: (book, request) => enterRows(book, request, effects),
    correct: (book, request) => correctRow(book, request, effects),
    withdraw: (book, request) => withdrawRow(book, request, effects),
    freeze: (campaign, request) => freezePlan(campaign, request, effects),
    unblind: (campaign, request) => unblind(campaign, request, effects),
    rows: (book, kind, page) => rowsHeld(book, kind, page, effects),
    hold: (bytes) => holdFile(bytes, effects),
    file: (book, path) => readFileOf(book, path, effects),
  };
}
