import type { Row } from './package/tables.ts';

/** Whether a campaign hides whose its products are: from the freezing of a blind plan to the unblinding. */
export function isBlind(campaign: Pick<Row<'campaign'>, 'blinding' | 'plan_frozen_at' | 'unblinded_at'>): boolean {
  return campaign.blinding === 'blind' && campaign.plan_frozen_at !== null && campaign.unblinded_at === null;
}
