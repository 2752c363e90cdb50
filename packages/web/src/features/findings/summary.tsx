import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { text } from '../../lib/text.ts';
import { Fold } from './fold.tsx';
import { InferenceTables } from './inference-table.tsx';
import type { Progress } from './progress.ts';
import { StandingsTable } from './standings-table.tsx';
import { SummaryTables } from './summary-table.tsx';
import { NotYet } from './teaching.tsx';

interface SummaryProps {
  readonly finding: CampaignFinding;
  readonly products: readonly ProductFinding[];
  readonly progress: Progress;
}

/** Each product in a line, its figures, and what so few pieces let one say. */
export function Summary({ finding, products, progress }: SummaryProps) {
  const given = { code: finding.campaign.campaign, products, pieces: finding.pieces };
  return (
    <Fold id="summary" label={text.findings.summary} note={text.findings.summaryHow}>
      <StandingsTable finding={finding} products={products} />
      {progress.hasForces ? (
        <>
          <SummaryTables {...given} />
          <InferenceTables {...given} />
        </>
      ) : (
        <NotYet words={text.findings.teaching.noForce} />
      )}
    </Fold>
  );
}
