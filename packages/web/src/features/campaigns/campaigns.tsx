import './campaigns.css';
import type { CampaignSummary } from '@provinghouse/contract';
import { Link } from 'wouter';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { useCampaigns } from '../../lib/requests/campaigns.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { verdicts } from '../../lib/verdicts.ts';
import { FirstVisit } from './first-visit.tsx';

/** All campaigns of the record, or what to do when there is none. */
export default function Campaigns() {
  const campaigns = useCampaigns();
  if (campaigns.state === 'reading') return <Reading />;
  if (campaigns.state === 'at fault') return <AtFault fault={campaigns.fault} again={campaigns.again} />;
  return (
    <Page
      title={text.campaigns.title}
      lead={text.campaigns.lead}
      aside={
        <span className="row-keys">
          {campaigns.record.campaigns.length === 0 ? null : (
            <Link className="press" href={hrefs.start()}>
              {text.start.guided}
            </Link>
          )}
          <Link className="press press-main" href={hrefs.newCampaign()}>
            {text.campaign.new}
          </Link>
        </span>
      }
    >
      <Section label={text.campaigns.label}>
        {campaigns.record.campaigns.length === 0 ? (
          <FirstVisit />
        ) : (
          <CampaignTable campaigns={campaigns.record.campaigns} />
        )}
      </Section>
    </Page>
  );
}

function CampaignTable({ campaigns }: { readonly campaigns: readonly CampaignSummary[] }) {
  const { head } = text.campaigns;
  return (
    <table className="leaf">
      <caption>{text.campaigns.caption}</caption>
      <thead>
        <tr>
          <th scope="col">{head.campaign}</th>
          <th scope="col">{head.asked}</th>
          <th scope="col">{head.opened}</th>
          <th scope="col">{head.pulled}</th>
          <th scope="col">{head.standing}</th>
        </tr>
      </thead>
      <tbody>
        {campaigns.map((campaign) => (
          <CampaignRow key={campaign.campaign} campaign={campaign} />
        ))}
      </tbody>
    </table>
  );
}

function CampaignRow({ campaign }: { readonly campaign: CampaignSummary }) {
  return (
    <tr className="campaign-row">
      <th scope="row">
        <Link className="campaign-title" href={hrefs.board(campaign.campaign)}>
          {campaign.title}
        </Link>
        <span className="line">{campaign.question}</span>
        <span className="line soft small">
          {campaign.campaign}, {text.campaigns.products(campaign.products)}
          {campaign.marking === null ? '' : `, ${campaign.marking}`}
        </span>
      </th>
      <td>{campaign.client ?? <span className="soft">{text.campaigns.nobody}</span>}</td>
      <td className="figure">{campaign.openedOn}</td>
      <td className="figure">{text.campaigns.pulled(campaign.pulled, campaign.pieces)}</td>
      <td>
        {campaign.standing === null ? (
          <span className="soft">{text.campaigns.judging}</span>
        ) : (
          <Standing standing={campaign.standing} />
        )}
      </td>
    </tr>
  );
}

function Standing({ standing }: { readonly standing: NonNullable<CampaignSummary['standing']> }) {
  return (
    <span className="standing-list">
      {verdicts
        .filter((verdict) => standing[verdict] > 0)
        .map((verdict) => (
          <VerdictMark key={verdict} verdict={verdict}>
            {text.verdict[verdict]} ({standing[verdict]})
          </VerdictMark>
        ))}
    </span>
  );
}
