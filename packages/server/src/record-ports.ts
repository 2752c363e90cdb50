import type { BriefFinding, CampaignFinding } from '@provinghouse/contract';
import {
  assembleInWorker,
  briefOf,
  curveOf,
  type Effects,
  gatherEvidence,
  type JudgedCampaign,
  ledgerHeadOf,
  ledgerPage,
  ledgerState,
  listCampaigns,
  packForReader,
  renderJudged,
} from '@provinghouse/service';
import type { ServerPorts } from './ports.ts';

interface Held {
  readonly head: string;
  readonly judged: Promise<JudgedCampaign>;
  /** The finding, once it is there. */
  finding: CampaignFinding | null;
}

/** The ports of a server over the record. A campaign is judged anew only when its ledger has grown, in a thread beside the server's. */
export function recordPorts(effects: Effects): ServerPorts {
  const held = new Map<string, Held>();
  const briefs = new WeakMap<CampaignFinding, BriefFinding>();

  async function judge(campaign: string): Promise<JudgedCampaign> {
    const evidence = await gatherEvidence(campaign, effects);
    return { evidence, finding: await assembleInWorker(evidence, effects) };
  }

  async function judged(campaign: string): Promise<JudgedCampaign | null> {
    const head = await ledgerHeadOf(campaign, effects);
    if (head === null) return null;
    const known = held.get(campaign);
    if (known?.head === head) return known.judged;
    const fresh: Held = { head, judged: judge(campaign), finding: null };
    held.set(campaign, fresh);
    fresh.judged.then(
      ({ finding }) => {
        fresh.finding = finding;
      },
      () => undefined,
    );
    // A failure is told to whoever asked, and not kept for the next one.
    fresh.judged.catch(() => {
      if (held.get(campaign) === fresh) held.delete(campaign);
    });
    return fresh.judged;
  }

  /** The finding where it is there; else it is begun, and null. A fault of the record is told to whoever opens the campaign. */
  async function findingSoFar(campaign: string): Promise<CampaignFinding | null> {
    const head = await ledgerHeadOf(campaign, effects);
    const known = held.get(campaign);
    if (known?.head === head && known.finding !== null) return known.finding;
    judged(campaign).catch(() => undefined);
    return null;
  }

  function briefed(finding: CampaignFinding): BriefFinding {
    const brief = briefs.get(finding) ?? briefOf(finding);
    briefs.set(finding, brief);
    return brief;
  }

  return {
    campaigns: (page) => listCampaigns(effects, { ...page, judged: findingSoFar }),
    finding: async (campaign) => (await judged(campaign))?.finding ?? null,
    brief: async (campaign) => {
      const found = await judged(campaign);
      return found === null ? null : briefed(found.finding);
    },
    curve: async (campaign, pull) => {
      const found = await judged(campaign);
      const row = found?.evidence.rows.pulls.find((candidate) => candidate.pull === pull);
      return found && row ? curveOf(row, found.evidence) : null;
    },
    package: async (campaign) =>
      (await ledgerHeadOf(campaign, effects)) === null ? null : packForReader(campaign, effects),
    report: async (campaign) => {
      const found = await judged(campaign);
      return found === null ? null : (await renderJudged(found, effects)).pdf;
    },
    ledger: (book, asked) => ledgerPage(book, asked, effects),
    ledgerState: (book) => ledgerState(book, effects),
  };
}
