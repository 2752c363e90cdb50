import type { CampaignFinding, PullCurve } from '@provinghouse/contract';

/** Everything a report is made from. It is frozen: the same document gives the same bytes. */
export interface ReportDocument {
  readonly finding: CampaignFinding;
  /** Thinned curves by pull code; a pull without one is drawn as an empty panel that says so. */
  readonly curves: Readonly<Record<string, PullCurve>>;
  /** Day of issue, YYYY-MM-DD; also the creation date inside the PDF. */
  readonly issuedOn: string;
  /** Name and version of the program that judged and rendered. */
  readonly software: string;
  /** Hash of the ledger's head entry at the time of judging: with the campaign code it is the report's identity. */
  readonly recordHead: string;
}

/** What one renders to. */
export interface Report {
  readonly pdf: Uint8Array;
  /** The complete Typst source, self-contained but for the fonts. */
  readonly source: string;
  readonly pages: number;
}

/** Characters of the record head shown in the footer of every page. */
const headLength = 12;

/** Unique identity of the report, the same on every page (ISO/IEC 17025:2017 7.8.2.1 d). */
export function identityOf(document: ReportDocument): string {
  return `${document.finding.campaign.campaign} / ${document.recordHead.slice(0, headLength)}`;
}
