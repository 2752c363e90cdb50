import type { Ledger } from '@provinghouse/contract';
import { campaignCodes, ledgerEntries, ledgerHead, verifyLedger } from '@provinghouse/store';
import type { Effects } from './effects.ts';

/** The whole ledger of a campaign and whether its chain of hashes holds; null for an unknown campaign. */
export async function ledgerOf(campaign: string, { store }: Effects): Promise<Ledger | null> {
  if (!(await campaignCodes(store)).includes(campaign)) return null;
  const { ok, head } = await verifyLedger(store, campaign);
  const entries = await ledgerEntries(store, campaign, { limit: Number.MAX_SAFE_INTEGER });
  return {
    verified: ok,
    head,
    entries: entries.map(({ seq, at, who, action, kind, record, why, hash }) => ({
      seq,
      at,
      who,
      action,
      kind,
      record,
      why,
      hash,
    })),
  };
}

/** Hash of the last entry of a campaign's ledger, unverified: it changes with every change of the campaign. Null for an unknown campaign. */
export async function ledgerHeadOf(campaign: string, { store }: Effects): Promise<string | null> {
  if (!(await campaignCodes(store)).includes(campaign)) return null;
  return (await ledgerHead(store, campaign)).head_hash;
}
