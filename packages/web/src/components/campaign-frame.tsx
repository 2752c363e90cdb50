import type { CampaignFinding } from '@provinghouse/contract';
import type { ReactNode } from 'react';
import { useFinding } from '../lib/requests/finding.ts';
import { text } from '../lib/text.ts';
import { AtFault, Reading } from './notice.tsx';

interface CampaignFrameProps {
  readonly code: string;
  readonly children: (finding: CampaignFinding) => ReactNode;
}

/** Reads the finding of a campaign for a screen, and carries its marking on every one of them. */
export function CampaignFrame({ code, children }: CampaignFrameProps) {
  const finding = useFinding(code);
  if (finding.state === 'reading') return <Reading />;
  if (finding.state === 'at fault') return <AtFault fault={finding.fault} again={finding.again} />;
  return (
    <>
      <Marking marking={finding.record.campaign.marking} />
      {children(finding.record)}
    </>
  );
}

/** The marking that every screen of a campaign carries. */
export function Marking({ marking }: { readonly marking: string | null }) {
  if (marking === null) return null;
  return (
    <div className="marking">
      <div className="sheet">
        <p>{text.marking(marking)}</p>
      </div>
    </div>
  );
}
