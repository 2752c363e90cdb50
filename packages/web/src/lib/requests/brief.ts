import type { BriefFinding } from '@provinghouse/contract';
import { useRecord } from '../use-record.ts';

/** What was asked of one campaign, and what its pieces can show. */
export function useBrief(code: string) {
  return useRecord<BriefFinding>(`/api/campaigns/${encodeURIComponent(code)}/brief`);
}
