import './brief.css';
import type { BriefFinding, CampaignFinding } from '@provinghouse/contract';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { useBrief } from '../../lib/requests/brief.ts';
import { text } from '../../lib/text.ts';
import { ApartTable } from './apart-table.tsx';
import { ClaimTable } from './claim-table.tsx';
import { OrderMatter } from './order-matter.tsx';
import { PassTable } from './pass-table.tsx';
import { unbroken } from './planned-text.ts';
import { RigTable } from './rig-table.tsx';
import { RuleTable } from './rule-table.tsx';
import { ShowingTable } from './showing-table.tsx';

/** The brief of a campaign: what was asked, what is claimed and by which rules, and what the pieces can show at all. */
export default function Brief({ code }: { readonly code: string }) {
  return <CampaignFrame code={code}>{(finding) => <BriefFrame finding={finding} />}</CampaignFrame>;
}

function BriefFrame({ finding }: { readonly finding: CampaignFinding }) {
  const brief = useBrief(finding.campaign.campaign);
  if (brief.state === 'reading') return <Reading />;
  if (brief.state === 'at fault') return <AtFault fault={brief.fault} again={brief.again} />;
  return <BriefPage finding={finding} brief={brief.record} />;
}

interface BriefPageProps {
  readonly finding: CampaignFinding;
  readonly brief: BriefFinding;
}

function BriefPage({ finding, brief }: BriefPageProps) {
  const words = text.brief;
  return (
    <Page
      title={words.title}
      mark={finding.campaign.title}
      lead={
        <p>
          {brief.question} <span className="soft">{text.board.askedBy(brief.askedBy)}</span>
        </p>
      }
    >
      <Section label={words.short} note={words.shortHow}>
        <Lines sentences={brief.answers} />
      </Section>
      <Section label={words.rule}>
        <Decision brief={brief} />
      </Section>
      <Section label={words.claims}>
        <ClaimTable finding={finding} />
      </Section>
      <Section label={words.rules} note={words.rulesHow}>
        <RuleTable products={finding.products} />
      </Section>
      <Section label={words.showing} note={words.showingHow}>
        <ShowingTable finding={finding} brief={brief} />
      </Section>
      <Section label={words.passes} note={words.passesHow}>
        <PassTable products={brief.products} />
      </Section>
      <Section label={words.apart} note={words.apartHow}>
        <ApartTable sizes={brief.sizes} />
      </Section>
      <Section label={words.rigs} note={words.rigsHow}>
        <RigTable rigs={brief.rigs} />
      </Section>
      {brief.order === null ? null : (
        <Section label={words.order} note={words.orderHow}>
          <OrderMatter code={brief.campaign} order={brief.order} />
        </Section>
      )}
      <Section label={words.assumptions}>
        <Lines sentences={brief.assumptions} />
      </Section>
    </Page>
  );
}

function Lines({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <ul className="sentences">
      {sentences.map((sentence) => (
        <li key={sentence}>{unbroken(sentence)}</li>
      ))}
    </ul>
  );
}

/** The decision rule, and the method and the sampling in the campaign's own words. */
function Decision({ brief }: { readonly brief: BriefFinding }) {
  const { ruleHead: head } = text.brief;
  const parts = [
    [head.rule, brief.ruleSentence],
    [head.method, brief.method],
    [head.sampling, brief.sampling],
  ] as const;
  return (
    <dl className="facts brief-decision">
      {parts.map(([name, words]) =>
        words === null ? null : (
          <div key={name} className="fact">
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ),
      )}
    </dl>
  );
}
