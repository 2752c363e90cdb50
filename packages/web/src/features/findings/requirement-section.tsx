import type { CampaignFinding } from '@provinghouse/contract';
import { type Quantity, quantityNames } from '@provinghouse/core';
import { text } from '../../lib/text.ts';
import { Fold } from './fold.tsx';
import { Gist } from './product-section.tsx';
import { RequirementRows } from './requirement-rows.tsx';
import { partId, type RequirementGroup } from './view.ts';

interface RequirementSectionProps {
  readonly finding: CampaignFinding;
  readonly quantity: Quantity;
  readonly groups: readonly RequirementGroup[];
  readonly startsOpen: boolean;
}

/** One requirement: every product and piece against it. */
export function RequirementSection({ finding, quantity, groups, startsOpen }: RequirementSectionProps) {
  const code = finding.campaign.campaign;
  const name = quantityNames[quantity];
  return (
    <Fold id={partId('requirement', quantity)} label={name} gist={<Gist groups={groups} />} startsOpen={startsOpen}>
      <RequirementRows
        code={code}
        title={text.findings.rows.titleOf(name)}
        file={`${code}-${quantity}`}
        groups={groups}
        headedBy="product"
      />
    </Fold>
  );
}
