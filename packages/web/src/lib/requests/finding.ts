import type { CampaignFinding } from '@provinghouse/contract';
import { useRecord } from '../use-record.ts';

/** The whole finding of one campaign. */
export function useFinding(code: string) {
  return useRecord<CampaignFinding>(`/api/campaigns/${encodeURIComponent(code)}`);
}
