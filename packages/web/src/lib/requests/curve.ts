import { readAt } from '../api/address.ts';
import { useRecord } from '../use-record.ts';

/** The curve of one pull, thinned for drawing. */
export function useCurve(code: string, pull: string) {
  return useRecord(readAt('/api/campaigns/{code}/pulls/{pull}/curve', { path: { code, pull } }));
}
