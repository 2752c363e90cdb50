import type { CampaignFinding } from '@provinghouse/contract';
import {
  assembleFinding,
  curveOf,
  type Effects,
  type Evidence,
  gatherEvidence,
  ledgerOf,
  listCampaigns,
  reportOf,
} from '@provinghouse/service';
import type { ServerPorts } from './ports.ts';

interface Judged {
  readonly head: string;
  readonly evidence: Evidence;
  readonly finding: CampaignFinding;
}

/** The ports of a server over the record. A campaign is judged anew only when its ledger has grown. */
export function recordPorts(effects: Effects): ServerPorts {
  const held = new Map<string, Judged>();

  async function judged(campaign: string): Promise<Judged | null> {
    const ledger = await ledgerOf(campaign, effects);
    if (ledger === null) return null;
    const known = held.get(campaign);
    if (known?.head === ledger.head) return known;
    const evidence = await gatherEvidence(campaign, effects);
    const fresh = { head: ledger.head, evidence, finding: assembleFinding(evidence) };
    held.set(campaign, fresh);
    return fresh;
  }

  return {
    campaigns: () => listCampaigns(effects),
    finding: async (campaign) => (await judged(campaign))?.finding ?? null,
    curve: async (campaign, pull) => {
      const found = await judged(campaign);
      const row = found?.evidence.rows.pulls.find((candidate) => candidate.pull === pull);
      return found && row ? curveOf(row, found.evidence) : null;
    },
    report: async (campaign) => {
      if ((await ledgerOf(campaign, effects)) === null) return null;
      return (await reportOf(campaign, effects)).pdf;
    },
    ledger: (campaign) => ledgerOf(campaign, effects),
  };
}
