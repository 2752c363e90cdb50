import type { CampaignFinding } from '@provinghouse/contract';
import { checkedInstrument } from './bench-kit.ts';

export interface Screen {
  readonly name: string;
  readonly path: string;
}

/** A sheet of the Reckoner with a chain at hand, a link, a fault and a calculation that does not exist. */
const sheetQuery = [
  'chain=en-818-3~4~8&limit=breakingForce',
  '1=force-uncertainty&1.force_kN=41,2&1.class=1&1.resolution_kN=0,02',
  '2=guard-band&2.lowerLimit=~0.lowerLimit&2.expandedUncertainty=~1!expandedUncertainty_kN&2.measured=~1.force_kN',
  '3=mean-stress&3.force_kN=eight',
  '4=nothing',
].join('&');

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
    { name: 'new-campaign', path: '/new' },
    { name: 'brief', path: `/c/${code}/brief` },
    { name: 'samples', path: `/c/${code}/samples` },
    { name: 'board', path: `/c/${code}` },
    ...pieces,
    { name: 'pulls', path: `/c/${code}/pulls` },
    { name: 'gauging', path: `/c/${code}/gauging` },
    { name: 'gauging-piece', path: `/c/${code}/gauging/ASH-8-1` },
    { name: 'breaks', path: `/c/${code}/breaks` },
    { name: 'break', path: `/c/${code}/breaks/P-001` },
    { name: 'zinc', path: `/c/${code}/zinc` },
    { name: 'zinc-piece', path: `/c/${code}/zinc/ASH-8-1` },
    { name: 'findings', path: `/c/${code}/findings` },
    { name: 'issue', path: `/c/${code}/issue` },
    { name: 'ledger', path: `/c/${code}/ledger` },
    { name: 'rulebook', path: '/rulebook?size=8' },
    { name: 'specification', path: '/rulebook/specification?of=din-766~3~8' },
    { name: 'comparison', path: '/rulebook/compare?first=din-766~3~8&second=astm-a413~30~3/8in' },
    { name: 'own-specification', path: '/rulebook/own?from=en-818-3~4~8&breakingForce.lower=44&pitch.upper=2x' },
    { name: 'unknown-specification', path: '/rulebook/specification?of=en-999~4~8' },
    { name: 'reckoner', path: '/reckoner' },
    { name: 'reckoner-sheet', path: `/reckoner?${sheetQuery}` },
    { name: 'kit', path: '/kit' },
    { name: 'instrument', path: `/kit/${checkedInstrument}` },
    { name: 'people', path: '/people' },
    { name: 'start', path: '/start' },
    { name: 'bench-ledger', path: '/ledger' },
    { name: 'rigs', path: '/rig' },
    { name: 'unknown-wires', path: '/rig/NONE/wires' },
    { name: 'unknown-piece', path: `/c/${code}/p/NONE` },
    { name: 'unknown-campaign', path: '/c/NONE' },
  ];
}

/** The finding as the server sends it. */
export async function readFinding(address: string, code: string): Promise<CampaignFinding> {
  const reply = await fetch(`${address}/api/campaigns/${code}`);
  return (await reply.json()) as CampaignFinding; // the server of this build sends the shape of the contract
}
