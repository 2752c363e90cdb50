import { createHash } from 'node:crypto';
import type { CampaignFinding } from '@provinghouse/contract';
import { InputError } from '@provinghouse/core';
import { renderReport } from '@provinghouse/publish';
import { verifyLedger } from '@provinghouse/store';
import type { Effects } from './effects.ts';
import { assembleFinding } from './judge/assemble.ts';
import { curvesOf } from './judge/curve.ts';
import { campaignRow, type Evidence } from './judge/evidence.ts';
import { gatherEvidence } from './judge/judge-campaign.ts';
import { isMarkedUnreal, isPracticePull } from './pull/practice-mark.ts';
import { writeWhole } from './write-whole.ts';

export const software = 'Provinghouse 0.1.0';

/** Points of a printed curve: a figure is a third of a page wide. */
const pointsPrinted = 400;

export interface Report {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/** A campaign with its finding, both of the same state of the record. */
export interface JudgedCampaign {
  readonly evidence: Evidence;
  readonly finding: CampaignFinding;
}

/** Gathers and judges a campaign of the record, then renders it: see {@link renderJudged}. */
export async function reportOf(campaign: string, effects: Effects): Promise<Report> {
  const evidence = await gatherEvidence(campaign, effects);
  return renderJudged({ evidence, finding: assembleFinding(evidence) }, effects);
}

/**
 * Renders the report of a campaign that is judged already, dated today.
 * @throws InputError `report/practice` where it holds simulated pulls and is not marked as practice or invented
 */
export async function renderJudged({ evidence, finding }: JudgedCampaign, effects: Effects): Promise<Report> {
  refusePractice(evidence);
  const ledger = await verifyLedger(effects.store, finding.campaign.campaign);
  const curves = curvesOf(finding.pieces, evidence, pointsPrinted);
  const issuedOn = effects.now().toISOString().slice(0, 10);
  return renderReport({ finding, curves, issuedOn, software, recordHead: ledger.head });
}

/** A report of simulated pulls must not pass for one of real ones: only a campaign whose marking says so on every page may hold them. */
function refusePractice(evidence: Evidence): void {
  const { rows, traces } = evidence;
  if (isMarkedUnreal(campaignRow(rows))) return;
  const simulated = rows.pulls.filter((row) => isPracticePull(row, traces.get(row.trace ?? '')?.bytes));
  if (simulated.length === 0) return;
  const pulls = simulated.map(({ pull }) => pull);
  throw new InputError(
    'report/practice',
    `The report is refused: ${pulls.join(', ')} ${pulls.length === 1 ? 'was' : 'were'} simulated by a practice rig. Practise in a campaign that is marked as practice.`,
    { pulls },
  );
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
