import type { CampaignRows } from '@provinghouse/contract';
import { campaignRows } from '@provinghouse/store';
import type { Effects } from '../effects.ts';
import { maskedRows } from './blind.ts';

/**
 * The rows of a campaign as anybody may see them, and as everything is judged and published from: see {@link maskedRows}.
 * @throws StoreError `store/unknown-campaign`
 */
export async function rowsShown(campaign: string, { store }: Pick<Effects, 'store'>): Promise<CampaignRows> {
  return maskedRows(await campaignRows(store, campaign));
}
