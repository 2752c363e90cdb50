import type { CampaignFinding, LedgerState } from '@provinghouse/contract';
import type { Verdict } from '@provinghouse/core';

export type PointName =
  | 'plan'
  | 'blind'
  | 'gauged'
  | 'pulled'
  | 'read'
  | 'twice'
  | 'judged'
  | 'memory'
  | 'doubts'
  | 'ledger';

/** One thing to be settled before a finding leaves the house, and what of it is open. */
export interface Point {
  readonly name: PointName;
  readonly standing: Verdict;
  /** What is open: codes of pieces or products, or sentences. */
  readonly open: readonly string[];
}

/**
 * Goes through a campaign as somebody does who must put a name under its finding. A point is settled, open, or for a person to weigh;
 * nothing here forbids issuing.
 */
export function openPoints(finding: CampaignFinding, ledger: LedgerState | null): readonly Point[] {
  const { campaign, pieces, products, doubts } = finding;
  const names = (meant: (piece: CampaignFinding['pieces'][number]) => boolean) =>
    pieces.filter(meant).map(({ piece }) => piece);
  const pulled = pieces.filter(({ pull }) => pull !== null);
  const memory = products.flatMap(({ product, specification }) =>
    specification.limits.some(({ provenance }) => provenance.flags.includes('memory')) ? [product] : [],
  );
  const point = (name: PointName, open: readonly string[]): Point => ({
    name,
    standing: open.length === 0 ? 'conforms' : 'inconclusive',
    open,
  });
  return [
    { name: 'plan', standing: campaign.plan_frozen_at === null ? 'inconclusive' : 'conforms', open: [] },
    ...(campaign.blinding === 'blind' ? [blindPoint(campaign.unblinded_at !== null)] : []),
    point(
      'gauged',
      names(({ gauging }) => gauging === null),
    ),
    point(
      'pulled',
      names(({ pull }) => pull === null),
    ),
    point(
      'read',
      names(({ pull, breaks }) => pull !== null && breaks.length === 0),
    ),
    point(
      'twice',
      pulled
        .filter(({ breaks }) => new Set(breaks.map(({ examiner }) => examiner)).size === 1)
        .map(({ piece }) => piece),
    ),
    point(
      'judged',
      products.filter(({ standing }) => standing === 'not judged').map(({ product }) => product),
    ),
    point('memory', memory),
    point('doubts', doubts),
    { name: 'ledger', standing: ledgerStanding(ledger), open: ledger?.disagreements ?? [] },
  ];
}

function blindPoint(isUnblinded: boolean): Point {
  return { name: 'blind', standing: isUnblinded ? 'conforms' : 'does not conform', open: [] };
}

function ledgerStanding(ledger: LedgerState | null): Verdict {
  if (ledger === null) return 'not judged';
  return ledger.verified ? 'conforms' : 'does not conform';
}
