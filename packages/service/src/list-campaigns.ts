import type { CampaignSummary } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';
import { campaignCodes } from '@provinghouse/store';
import type { Effects } from './effects.ts';
import { judgeCampaign } from './judge/judge-campaign.ts';

/** Every campaign of the record with how far it is and where its products stand. */
export async function listCampaigns(effects: Effects): Promise<CampaignSummary[]> {
  const codes = await campaignCodes(effects.store);
  return Promise.all(codes.map((campaign) => summaryOf(campaign, effects)));
}

async function summaryOf(code: string, effects: Effects): Promise<CampaignSummary> {
  const { campaign, products, pieces } = await judgeCampaign({ campaign: code }, effects);
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
