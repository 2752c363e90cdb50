import { readAt } from '../api/address.ts';
import { useRecord } from '../use-record.ts';

/** The campaigns of the record. A lab of ten people has tens of them, not thousands: one page of the API holds them all. */
export function useCampaigns() {
  return useRecord(readAt('/api/campaigns', { query: { limit: 500 } }));
}
