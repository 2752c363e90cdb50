import type { CampaignFinding } from '@provinghouse/contract';

export interface Screen {
  readonly name: string;
  readonly path: string;
}

/** Every screen over the demo campaign, with pieces that show each kind of pull. */
export function screensOf(finding: CampaignFinding): Screen[] {
  const code = finding.campaign.campaign;
  const kinds = {
    value: finding.pieces.find((piece) => piece.pull?.use === 'value' && piece.standing === 'conforms'),
    failing: finding.pieces.find((piece) => piece.standing === 'does not conform'),
    'at-least': finding.pieces.find((piece) => piece.pull?.use === 'at least'),
    none: finding.pieces.find((piece) => piece.pull?.use === 'none'),
  };
  const pieces = Object.entries(kinds).flatMap(([kind, piece]) =>
    piece ? [{ name: `piece-${kind}`, path: `/c/${code}/p/${encodeURIComponent(piece.piece)}` }] : [],
  );
  return [
    { name: 'campaigns', path: '/' },
    { name: 'brief', path: `/c/${code}/brief` },
    { name: 'board', path: `/c/${code}` },
    ...pieces,
    { name: 'findings', path: `/c/${code}/findings` },
    { name: 'ledger', path: `/c/${code}/ledger` },
    { name: 'unknown-piece', path: `/c/${code}/p/NONE` },
    { name: 'unknown-campaign', path: '/c/NONE' },
  ];
}

/** The finding as the server sends it. */
export async function readFinding(address: string, code: string): Promise<CampaignFinding> {
  const reply = await fetch(`${address}/api/campaigns/${code}`);
  return (await reply.json()) as CampaignFinding; // the server of this build sends the shape of the contract
}
