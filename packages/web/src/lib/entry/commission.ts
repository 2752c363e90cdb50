import type { Row } from '@provinghouse/contract';
import { text } from '../text.ts';
import { enqueue, type Outcome } from './outbox.ts';
import { personHere } from './person.ts';
import { readRows } from './use-rows.ts';

/**
 * Opens a campaign. Where the answer to the first sending was lost, the second one is told that the code is taken: if that campaign is this
 * very one, it was kept.
 */
export async function openCampaign(campaign: Row<'campaign'>): Promise<Outcome> {
  const code = campaign.campaign;
  const body = { campaign, who: personHere() ?? text.entry.nobody };
  const label = text.campaign.opening(code);
  const outcome = await enqueue({ book: code, label, url: '/api/campaigns', body });
  if (outcome.kept) return outcome;
  const held = await readRows(code, 'campaign');
  const row = 'rows' in held ? held.rows[0] : undefined;
  const isSame = row?.revision === 1 && JSON.stringify(sorted(row.body)) === JSON.stringify(sorted(campaign));
  return isSame ? { kept: true, answer: { ledgerSeq: 1 } } : outcome;
}

function sorted(row: Row<'campaign'>): readonly (readonly [string, unknown])[] {
  return Object.entries(row).toSorted(([a], [b]) => (a < b ? -1 : 1));
}
