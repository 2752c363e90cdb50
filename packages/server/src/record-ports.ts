import type { CampaignFinding } from '@provinghouse/contract';
import {
  assembleFinding,
  curveOf,
  type Effects,
  type Evidence,
  gatherEvidence,
  ledgerHeadOf,
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
    const head = await ledgerHeadOf(campaign, effects);
    if (head === null) return null;
    const known = held.get(campaign);
    if (known?.head === head) return known;
    const evidence = await gatherEvidence(campaign, effects);
    const fresh = { head, evidence, finding: assembleFinding(evidence) };
    held.set(campaign, fresh);
    return fresh;
  }

  return {
    campaigns: () => listCampaigns(effects, async (campaign) => (await judged(campaign))?.finding ?? null),
    finding: async (campaign) => (await judged(campaign))?.finding ?? null,
    curve: async (campaign, pull) => {
      const found = await judged(campaign);
      const row = found?.evidence.rows.pulls.find((candidate) => candidate.pull === pull);
      return found && row ? curveOf(row, found.evidence) : null;
    },
    report: async (campaign) => {
      if ((await ledgerHeadOf(campaign, effects)) === null) return null;
      return (await reportOf(campaign, effects)).pdf;
    },
    ledger: (campaign) => ledgerOf(campaign, effects),
  };
}
