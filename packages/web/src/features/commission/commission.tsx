import './commission.css';
import type { Row } from '@provinghouse/contract';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { blindingColumn, methodColumns, questionColumns, ruleColumns } from '../../components/campaign-columns.tsx';
import { Page, Section } from '../../components/page.tsx';
import { type AskedColumn, RowForm } from '../../components/row-form.tsx';
import { openCampaign } from '../../lib/entry/commission.ts';
import { dropDraft } from '../../lib/entry/draft.ts';
import { today } from '../../lib/entry/today.ts';
import type { Fault } from '../../lib/request.ts';
import { useCampaigns } from '../../lib/requests/campaigns.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

const words = text.campaign;
const draft = 'new campaign';

const asked: readonly AskedColumn[] = [
  { column: 'campaign', label: words.label.campaign, hint: words.hint.campaign },
  ...questionColumns,
  ...ruleColumns,
  ...methodColumns,
  blindingColumn,
];

/** Opens a new campaign: its question and how it is to be decided. What follows is entered in its Brief. */
export default function Commission() {
  const [, go] = useLocation();
  const codes = useCodes();
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<Fault | null>(null);
  const open = async (campaign: Row<'campaign'>) => {
    setBusy(true);
    setFault(null);
    const outcome = await openCampaign(campaign);
    setBusy(false);
    if (!outcome.kept) return setFault(outcome.fault);
    dropDraft(draft);
    go(hrefs.brief(campaign.campaign));
  };
  const taken = ({ campaign }: Row<'campaign'>) => {
    const other = codes.find((code) => code.toLowerCase() === campaign.toLowerCase());
    return other === undefined ? null : { column: 'campaign', fault: words.taken(other) };
  };
  return (
    <Page title={words.new} lead={words.newLead}>
      <Section label={words.ask} note={words.askHow}>
        <RowForm
          kind="campaign"
          asked={asked}
          start={{
            opened_on: today(),
            decision_rule: 'guarded acceptance',
            coverage_factor: 2,
            blinding: 'open',
          }}
          keep={words.open}
          draft={draft}
          isBusy={isBusy}
          check={taken}
          onKeep={(row) => void open(row)}
        >
          <p className="soft commission-next">{words.afterwards}</p>
          {fault === null ? null : (
            <p className="form-fault" role="alert">
              {fault.detail}
            </p>
          )}
        </RowForm>
      </Section>
    </Page>
  );
}

/** Codes that are taken, as far as the record could be read. */
function useCodes(): readonly string[] {
  const campaigns = useCampaigns();
  return campaigns.state === 'read' ? campaigns.record.campaigns.map(({ campaign }) => campaign) : [];
}
