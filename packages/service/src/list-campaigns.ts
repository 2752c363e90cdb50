import type { CampaignFinding, CampaignSummary } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';
import { campaignCodes } from '@provinghouse/store';
import type { Effects } from './effects.ts';

/** Codes of the campaigns in the record, sorted. */
export function heldCampaigns({ store }: Effects): Promise<string[]> {
  return campaignCodes(store);
}

/** Every campaign of the record with how far it is and where its products stand; `judge` gives the finding of one. */
export async function listCampaigns(
  { store }: Effects,
  judge: (campaign: string) => Promise<CampaignFinding | null>,
): Promise<CampaignSummary[]> {
  const findings = await Promise.all((await campaignCodes(store)).map(judge));
  return findings.flatMap((finding) => (finding ? [summaryOf(finding)] : []));
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
