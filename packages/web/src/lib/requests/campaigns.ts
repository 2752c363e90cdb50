import type { CampaignSummary } from '@provinghouse/contract';
import { useRecord } from '../use-record.ts';

/** All campaigns of the record. */
export function useCampaigns() {
  return useRecord<readonly CampaignSummary[]>('/api/campaigns');
}
