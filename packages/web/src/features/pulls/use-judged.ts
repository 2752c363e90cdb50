import type { CampaignFinding } from '@provinghouse/contract';
import { useEffect, useState } from 'react';
import { onChange } from '../../lib/entry/change-news.ts';
import { readRecord } from '../../lib/request.ts';

/** The finding, where the record can be judged, and anew when something of the campaign was kept. The list does not wait for it. */
export function useJudged(code: string): CampaignFinding | null {
  const [finding, setFinding] = useState<CampaignFinding | null>(null);
  useEffect(() => {
    let isGone = false;
    const read = async () => {
      const reply = await readRecord<CampaignFinding>(`/api/campaigns/${encodeURIComponent(code)}`);
      if (!isGone && reply.ok) setFinding(reply.record);
    };
    void read();
    const off = onChange((changed) => {
      if (changed === code) void read();
    });
    return () => {
      isGone = true;
      off();
    };
  }, [code]);
  return finding;
}
