import './brief.css';
import './brief-desk.css';
import { type BriefFinding, type CampaignFinding, isBlind, type Row, type RowHeld } from '@provinghouse/contract';
import type { OwnStandard } from '@provinghouse/core';
import { Marking } from '../../components/campaign-frame.tsx';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { useRows } from '../../lib/entry/use-rows.ts';
import { useStandardsOf } from '../../lib/own-standards.ts';
import type { Fault } from '../../lib/request.ts';
import { useBrief } from '../../lib/requests/brief.ts';
import { useFinding } from '../../lib/requests/finding.ts';
import { text } from '../../lib/text.ts';
import { AmendmentTable } from './amendment-table.tsx';
import { ClaimPart } from './claim-part.tsx';
import { ComputedPart, Lines } from './computed-part.tsx';
import { FreezePart, FrozenMark } from './freeze-part.tsx';
import { PlanPart } from './plan-part.tsx';
import { QuestionPart, RulePart } from './question-part.tsx';
import { RuleTable } from './rule-table.tsx';

/** The brief of a campaign: what was asked, what is claimed and by which rules, the plan, and what the pieces can show at all. */
export default function Brief({ code }: { readonly code: string }) {
  const campaign = useRows(code, 'campaign');
  const products = useRows(code, 'products');
  const own = useStandardsOf(code);
  if (campaign.state === 'at fault') return <AtFault fault={campaign.fault} again={campaign.again} />;
  if (products.state === 'at fault') return <AtFault fault={products.fault} again={products.again} />;
  if (own.state === 'at fault') return <AtFault fault={own.fault} again={own.again} />;
  const held = campaign.state === 'read' ? campaign.rows[0] : undefined;
  if (!held || products.state === 'reading' || own.state === 'reading') return <Reading />;
  return (
    <>
      <Marking marking={held.body.marking} />
      <BriefPage code={code} held={held} products={products.rows} own={own.rows} />
    </>
  );
}

interface BriefPageProps {
  readonly code: string;
  readonly held: RowHeld<'campaign'>;
  readonly products: readonly RowHeld<'products'>[];
  readonly own: readonly OwnStandard[];
}

function BriefPage({ code, held, products, own }: BriefPageProps) {
  const words = text.brief;
  const campaign = held.body;
  const { finding, brief, fault } = useComputed(code);
  const isPlanned = brief?.products.some(({ pieces }) => pieces > 0) === true;
  const hasLatePulls = campaign.plan_frozen_at === null && finding?.pieces.some(({ pull }) => pull !== null) === true;
  const isAnswered = finding !== null && brief !== null && finding.products.length > 0;
  return (
    <Page
      title={words.title}
      mark={campaign.title}
      aside={<Standing campaign={campaign} isBlind={isBlind(campaign)} />}
      lead={
        <p>
          {campaign.question} <span className="soft">{text.board.askedBy(campaign.client)}</span>
        </p>
      }
    >
      {isAnswered && isPlanned && brief.answers.length > 0 ? (
        <Section label={words.short} note={words.shortHow}>
          <Lines sentences={brief.answers} />
        </Section>
      ) : null}
      <Section label={words.desk.question}>
        <QuestionPart code={code} held={held} />
      </Section>
      <Section label={words.rule}>
        <RulePart code={code} held={held} brief={brief} />
      </Section>
      <Section label={words.claims}>
        <ClaimPart
          code={code}
          campaign={campaign}
          isBlind={isBlind(campaign)}
          products={products}
          own={own}
          finding={finding}
        />
      </Section>
      {isAnswered ? (
        <Section label={words.rules} note={words.rulesHow}>
          <RuleTable products={finding.products} />
        </Section>
      ) : null}
      <Section label={words.desk.plan.label} note={words.desk.plan.how}>
        <PlanPart code={code} held={held} brief={brief} isLate={hasLatePulls} />
      </Section>
      <Section label={words.desk.freeze.label}>
        {hasLatePulls ? (
          <p className="lead-in">{words.desk.freeze.late}</p>
        ) : (
          <FreezePart code={code} campaign={campaign} products={products} />
        )}
      </Section>
      {campaign.plan_frozen_at === null ? null : (
        <Section label={words.desk.amendments.label} note={words.desk.amendments.how}>
          <AmendmentTable code={code} />
        </Section>
      )}
      {isAnswered && isPlanned ? <ComputedPart finding={finding} brief={brief} /> : null}
      {fault === null ? null : (
        <Section label={words.showing}>
          <p className="form-fault">{words.desk.computed.fault}</p>
          <p>{fault.detail}</p>
        </Section>
      )}
    </Page>
  );
}

interface Computed {
  readonly finding: CampaignFinding | null;
  readonly brief: BriefFinding | null;
  readonly fault: Fault | null;
}

/** What is worked out from the record; the rest of the page does not wait for it. */
function useComputed(code: string): Computed {
  const finding = useFinding(code);
  const brief = useBrief(code);
  return {
    finding: finding.state === 'read' ? finding.record : null,
    brief: brief.state === 'read' ? brief.record : null,
    fault: finding.state === 'at fault' ? finding.fault : brief.state === 'at fault' ? brief.fault : null,
  };
}

interface StandingProps {
  readonly campaign: Row<'campaign'>;
  readonly isBlind: boolean;
}

function Standing({ campaign, isBlind: isMasked }: StandingProps) {
  const words = text.brief.desk.standing;
  const frozen = campaign.plan_frozen_at;
  return (
    <p className="brief-standing">
      {frozen === null ? (
        words.open
      ) : (
        <>
          <FrozenMark /> {words.frozen(frozen.slice(0, 10))}
        </>
      )}
      {isMasked ? <span className="badge">{words.blind}</span> : null}
      {campaign.unblinded_at === null ? null : (
        <span className="soft">{words.unblinded(campaign.unblinded_at.slice(0, 10))}</span>
      )}
    </p>
  );
}
