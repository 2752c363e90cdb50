import type { PullCurve } from '@provinghouse/contract';
import { useRecord } from '../use-record.ts';

/** The curve of one pull, thinned for drawing. */
export function useCurve(code: string, pull: string) {
  return useRecord<PullCurve>(`/api/campaigns/${encodeURIComponent(code)}/pulls/${encodeURIComponent(pull)}/curve`);
}
