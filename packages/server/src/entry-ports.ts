import { randomInt } from 'node:crypto';
import type {
  CommissionRequest,
  CorrectionRequest,
  CutRequest,
  EntryRequest,
  FilesHeld,
  HangingResults,
  HeldFile,
  Kept,
  KeptCut,
  KeptRevision,
  KitInCampaigns,
  PlannedPulls,
  RowsHeld,
  StepRequest,
  TableName,
  TracePreview,
  TracePreviewRequest,
  WithdrawalRequest,
} from '@provinghouse/contract';
import { type Effects, ledgerState } from '@provinghouse/service';
import {
  commission,
  correctRow,
  enterRows,
  type FileRead,
  type FilesAsked,
  filesHeld,
  freezePlan,
  holdFile,
  type PageAsked,
  readFileOf,
  rowsHeld,
  unblind,
  withdrawRow,
} from '@provinghouse/service/entry';
import { type HangingAsked, hangingResults, kitInCampaigns } from '@provinghouse/service/kit';
import { cutSample, type LabelsAsked, labelsOf } from '@provinghouse/service/samples';
import { plannedPulls, previewTrace } from '@provinghouse/service/trace-entry';
import { bringInDemo } from './demo-campaign.ts';

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
  files(book: string, asked: FilesAsked): Promise<FilesHeld>;
  cut(campaign: string, request: CutRequest): Promise<KeptCut>;
  /** Labels of pieces as PDF. */
  labels(campaign: string, asked: LabelsAsked): Promise<Uint8Array>;
  /** What a file that was sent would be as the recording of a pull; nothing is kept. */
  previewTrace(campaign: string, request: TracePreviewRequest): Promise<TracePreview>;
  /** Brings the demo campaign of this installation in; its code and the place of its last entry. */
  demo(): Promise<Kept & { readonly campaign: string }>;
  kitInCampaigns(): Promise<KitInCampaigns>;
  /** What was read with an instrument in a stretch of time. */
  hanging(asked: HangingAsked): Promise<HangingResults>;
  /** The order in which the pieces are to be pulled. */
  plannedPulls(campaign: string): Promise<PlannedPulls>;
}

/** The ports of a server that writes into the record. */
export function entryPorts(effects: Effects): EntryPorts {
  return {
    demo: async () => {
      const campaign = await bringInDemo(effects);
      return { campaign, ledgerSeq: (await ledgerState(campaign, effects))?.entries ?? 0 };
    },
    kitInCampaigns: () => kitInCampaigns(effects),
    hanging: (asked) => hangingResults(asked, effects),
    commission: (request) => commission(request, effects),
    enter: (book, request) => enterRows(book, request, effects),
    correct: (book, request) => correctRow(book, request, effects),
    withdraw: (book, request) => withdrawRow(book, request, effects),
    freeze: (campaign, request) => freezePlan(campaign, request, effects),
    unblind: (campaign, request) => unblind(campaign, request, effects),
    rows: (book, kind, page) => rowsHeld(book, kind, page, effects),
    hold: (bytes) => holdFile(bytes, effects),
    files: (book, asked) => filesHeld(book, asked, effects),
    file: (book, path) => readFileOf(book, path, effects),
    cut: (campaign, request) => cutSample(campaign, request, { ...effects, draw: randomInt }),
    labels: (campaign, asked) => labelsOf(campaign, asked, effects),
    previewTrace: (campaign, request) => previewTrace(campaign, request, effects),
    plannedPulls: (campaign) => plannedPulls(campaign, effects),
  };
}
