import type { CampaignFinding, CampaignList, CampaignRows, CampaignSummary } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';
import { campaignCodes } from '@provinghouse/store';
import { rowsShown } from './blind/rows-shown.ts';
import type { Effects } from './effects.ts';
import { campaignRow } from './judge/evidence.ts';

/** Codes of the campaigns in the record, sorted. */
export function heldCampaigns({ store }: Effects): Promise<string[]> {
  return campaignCodes(store);
}

export interface CampaignsAsked {
  /** Only campaigns whose codes come after this one. */
  readonly after: string;
  readonly limit: number;
  /** Gives the finding of one where it is there already, else null: the list does not wait for judging. */
  readonly judged: (campaign: string) => Promise<CampaignFinding | null>;
}

/** A page of the campaigns of the record, each with how far it is and, where it is judged, where its products stand. */
export async function listCampaigns(
  { store }: Pick<Effects, 'store'>,
  { after, limit, judged }: CampaignsAsked,
): Promise<CampaignList> {
  const left = (await campaignCodes(store)).filter((code) => code > after);
  const codes = left.slice(0, limit);
  const campaigns = await Promise.all(
    codes.map(async (code) => summaryOf(await rowsShown(code, { store }), await judged(code))),
  );
  return { campaigns, next: left.length > limit ? (codes.at(-1) ?? null) : null };
}

function summaryOf(rows: CampaignRows, finding: CampaignFinding | null): CampaignSummary {
  const { campaign, title, question, client, opened_on, marking } = campaignRow(rows);
  return {
    campaign,
    title,
    question,
    client,
    openedOn: opened_on,
    marking,
    products: rows.products.length,
    pieces: rows.pieces.length,
    pulled: new Set(rows.pulls.map(({ piece }) => piece)).size,
    standing: finding === null ? null : standingOf(finding),
  };
}

function standingOf({ products }: CampaignFinding): Record<Verdict, number> {
  const count = (verdict: Verdict) => products.filter((product) => product.standing === verdict).length;
  return {
    conforms: count('conforms'),
    'does not conform': count('does not conform'),
    inconclusive: count('inconclusive'),
    'not judged': count('not judged'),
  };
}
