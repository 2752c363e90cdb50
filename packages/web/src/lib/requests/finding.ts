import { readAt } from '../api/address.ts';
import { useRecord, useRecordIfAny } from '../use-record.ts';

/** The whole finding of one campaign. */
export function useFinding(code: string) {
  return useRecord(readAt('/api/campaigns/{code}', { path: { code } }));
}

/** The finding, where the record can be judged, for a screen that does not wait for it. */
export function useFindingIfAny(code: string) {
  return useRecordIfAny(readAt('/api/campaigns/{code}', { path: { code } }));
}
