export { isStoreError, type StoreError, type StoreErrorCode } from '@provinghouse/store';
export { briefOf, briefOfCampaign } from './brief/brief.ts';
export type { Effects, Progress } from './effects.ts';
export { assembleFinding } from './judge/assemble.ts';
export { curveOf } from './judge/curve.ts';
export type { Evidence, TraceFile } from './judge/evidence.ts';
export { assembleInWorker } from './judge/in-worker.ts';
export { gatherEvidence, judgeCampaign } from './judge/judge-campaign.ts';
export { type LedgerAsked, ledgerPage } from './ledger/ledger-page.ts';
export { ledgerHeadOf, ledgerState } from './ledger/ledger-state.ts';
export { heldCampaigns, listCampaigns } from './list-campaigns.ts';
export { type OpenRecord, openRecord, recordHome } from './open-record.ts';
export * from './package/index.ts';
export {
  type JudgedCampaign,
  type Published,
  publishCampaign,
  type Report,
  renderJudged,
  reportOf,
  software,
} from './publish-campaign.ts';
export { type FileReading, readTraceFile } from './read-trace-file.ts';
export { writeWhole } from './write-whole.ts';
