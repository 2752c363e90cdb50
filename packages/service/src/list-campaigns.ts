import type { CampaignFinding, CampaignList, CampaignSummary } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';
import { campaignCodes } from '@provinghouse/store';
import type { Effects } from './effects.ts';

/** Codes of the campaigns in the record, sorted. */
export function heldCampaigns({ store }: Effects): Promise<string[]> {
  return campaignCodes(store);
}

export interface CampaignsAsked {
  /** Only campaigns whose codes come after this one. */
  readonly after: string;
  readonly limit: number;
  /** Gives the finding of one. */
  readonly judge: (campaign: string) => Promise<CampaignFinding | null>;
}

/** A page of the campaigns of the record, each with how far it is and where its products stand. */
export async function listCampaigns(
  { store }: Pick<Effects, 'store'>,
  { after, limit, judge }: CampaignsAsked,
): Promise<CampaignList> {
  const left = (await campaignCodes(store)).filter((code) => code > after);
  const codes = left.slice(0, limit);
  const findings = await Promise.all(codes.map(judge));
  return {
    campaigns: findings.flatMap((finding) => (finding ? [summaryOf(finding)] : [])),
    next: left.length > limit ? (codes.at(-1) ?? null) : null,
  };
}

function summaryOf({ campaign, products, pieces }: CampaignFinding): CampaignSummary {
  const count = (verdict: Verdict) => products.filter((product) => product.standing === verdict).length;
  return {
    campaign: campaign.campaign,
    title: campaign.title,
    question: campaign.question,
    client: campaign.client,
    openedOn: campaign.opened_on,
    marking: campaign.marking,
    products: products.length,
    pieces: pieces.length,
    pulled: pieces.filter((piece) => piece.pull !== null).length,
    standing: {
      conforms: count('conforms'),
      'does not conform': count('does not conform'),
      inconclusive: count('inconclusive'),
      'not judged': count('not judged'),
    },
  };
}
