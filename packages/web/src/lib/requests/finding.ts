import { readAt } from '../api/address.ts';
import { useRecord } from '../use-record.ts';

/** The whole finding of one campaign. */
export function useFinding(code: string) {
  return useRecord(readAt('/api/campaigns/{code}', { path: { code } }));
}
