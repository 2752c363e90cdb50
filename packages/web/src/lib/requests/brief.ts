import { readAt } from '../api/address.ts';
import { useRecord } from '../use-record.ts';

/** What was asked of one campaign, and what its pieces can show. */
export function useBrief(code: string) {
  return useRecord(readAt('/api/campaigns/{code}/brief', { path: { code } }));
}
