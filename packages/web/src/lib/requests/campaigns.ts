import { useEffect } from 'react';
import { readAt } from '../api/address.ts';
import { useRecord } from '../use-record.ts';

/** While a campaign is being judged its standing is asked for again so often. */
const askAgain_ms = 1000;

/** The campaigns of the record. A lab of ten people has tens of them, not thousands: one page of the API holds them all. */
export function useCampaigns() {
  const found = useRecord(readAt('/api/campaigns', { query: { limit: 500 } }));
  const isOpen = found.state === 'read' && found.record.campaigns.some(({ standing }) => standing === null);
  const again = found.state === 'read' ? found.again : null;
  useEffect(() => {
    if (!isOpen || again === null) return;
    const timer = setInterval(again, askAgain_ms);
    return () => clearInterval(timer);
  }, [isOpen, again]);
  return found;
}
