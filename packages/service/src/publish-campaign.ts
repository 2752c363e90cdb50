import { createHash } from 'node:crypto';
import { renderReport } from '@provinghouse/publish';
import { verifyLedger } from '@provinghouse/store';
import type { Effects } from './effects.ts';
import { assembleFinding } from './judge/assemble.ts';
import { curvesOf } from './judge/curve.ts';
import { gatherEvidence } from './judge/judge-campaign.ts';
import { writeWhole } from './write-whole.ts';

export const software = 'Provinghouse 0.1.0';

/** Points of a printed curve: a figure is a third of a page wide. */
const pointsPrinted = 400;

export interface Report {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/** Renders the report of a campaign as it stands in the record, dated today. */
export async function reportOf(campaign: string, effects: Effects): Promise<Report> {
  const evidence = await gatherEvidence(campaign, effects);
  const ledger = await verifyLedger(effects.store, campaign);
  const finding = assembleFinding(evidence);
  const curves = curvesOf(finding.pieces, evidence, pointsPrinted);
  const issuedOn = effects.now().toISOString().slice(0, 10);
  return renderReport({ finding, curves, issuedOn, software, recordHead: ledger.head });
}

export interface Published {
  readonly campaign: string;
  readonly file: string;
  readonly pages: number;
  readonly sha256: string;
}

/** Writes the report of a campaign to a file; a failure leaves no file behind. */
export async function publishCampaign(
  input: { readonly campaign: string; readonly out: string },
  effects: Effects,
): Promise<Published> {
  const { pdf, pages } = await reportOf(input.campaign, effects);
  await writeWhole(input.out, pdf);
  return { campaign: input.campaign, file: input.out, pages, sha256: createHash('sha256').update(pdf).digest('hex') };
}
