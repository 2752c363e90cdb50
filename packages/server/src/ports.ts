import type { CampaignFinding, CampaignSummary, PullCurve } from '@provinghouse/contract';

/** One line of a campaign's ledger, as shown. */
export interface LedgerLine {
  readonly seq: number;
  /** When it was written, ISO 8601. */
  readonly at: string;
  readonly who: string;
  readonly action: string;
  /** The kind of record written: a table of the data package, or `campaign`. */
  readonly kind: string;
  readonly record: string;
  readonly why: string | null;
  readonly hash: string;
}

export interface Ledger {
  readonly entries: readonly LedgerLine[];
  /** True when every hash follows from its entry and the one before. */
  readonly verified: boolean;
}

/** What the server reads. Null everywhere means: there is no such record. An InputError means: the record is at fault. */
export interface ServerPorts {
  campaigns(): Promise<readonly CampaignSummary[]>;
  finding(campaign: string): Promise<CampaignFinding | null>;
  curve(campaign: string, pull: string): Promise<PullCurve | null>;
  /** The report as PDF. */
  report(campaign: string): Promise<Uint8Array | null>;
  ledger(campaign: string): Promise<Ledger | null>;
}
