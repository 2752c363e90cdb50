import type {
  BriefFinding,
  CampaignFinding,
  CampaignList,
  LedgerPage,
  LedgerState,
  PullCurve,
} from '@provinghouse/contract';
import type { LedgerAsked } from '@provinghouse/service';

/** What the server reads. Null everywhere means: there is no such record. An InputError means: the record is at fault. */
export interface ServerPorts {
  campaigns(page: { readonly after: string; readonly limit: number }): Promise<CampaignList>;
  finding(campaign: string): Promise<CampaignFinding | null>;
  /** What was asked, and what the pieces prepared can show. */
  brief(campaign: string): Promise<BriefFinding | null>;
  curve(campaign: string, pull: string): Promise<PullCurve | null>;
  /** The data package as a ZIP. */
  package(campaign: string): Promise<Uint8Array | null>;
  /** The report as PDF. */
  report(campaign: string): Promise<Uint8Array | null>;
  ledger(book: string, asked: LedgerAsked): Promise<LedgerPage | null>;
  /** Whether a ledger is whole, worked out from its first entry on. */
  ledgerState(book: string): Promise<LedgerState | null>;
}
