import './pulls.css';
import { Link } from 'wouter';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { useFindingIfAny } from '../../lib/requests/finding.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { IncomingList } from './incoming-list.tsx';
import { Overlay } from './overlay.tsx';
import { PullList } from './pull-list.tsx';
import { type Desk, useDesk } from './use-desk.ts';

/** The pulls of a campaign: brought in from files, keyed from the panel, listed in the order of the plan, laid over each other. */
export default function Pulls({ code }: { readonly code: string }) {
  const state = useDesk(code);
  if (state.state === 'reading') return <Reading />;
  if (state.state === 'at fault') return <AtFault fault={state.fault} again={state.again} />;
  return <PullsPage desk={state.desk} onChanged={state.again} />;
}

function PullsPage({ desk, onChanged }: { readonly desk: Desk; readonly onChanged: () => void }) {
  const finding = useFindingIfAny(desk.code);
  const words = text.pulls;
  return (
    <>
      {desk.campaign.marking === null ? null : (
        <div className="marking">
          <div className="sheet">
            <p>{text.marking(desk.campaign.marking)}</p>
          </div>
        </div>
      )}
      <Page
        title={words.title}
        lead={words.lead}
        aside={
          <Link className="press" href={hrefs.rigs()}>
            {words.toRig}
          </Link>
        }
      >
        {desk.pieces.length === 0 ? (
          <Section label={words.list.label}>
            <p>
              {words.noPieces} <Link href={hrefs.samples(desk.code)}>{words.toSamples}</Link>
            </p>
          </Section>
        ) : (
          <>
            <Section label={words.bring.label} note={words.bring.note}>
              <NotFrozen desk={desk} />
              <IncomingList desk={desk} />
            </Section>
            <Section label={words.list.label} note={words.list.note}>
              <PullList desk={desk} finding={finding} onChanged={onChanged} />
            </Section>
            <Section label={words.overlay.label} note={words.overlay.note}>
              <Overlay desk={desk} finding={finding} />
            </Section>
          </>
        )}
      </Page>
    </>
  );
}

/** Said before anybody drops a file; the record says so too, whatever the screen believes. */
function NotFrozen({ desk }: { readonly desk: Desk }) {
  if (desk.campaign.plan_frozen_at !== null || desk.pulls.length > 0) return null;
  return (
    <p className="pulls-open">
      {text.pulls.notFrozen} <Link href={hrefs.brief(desk.code)}>{text.pulls.toBrief}</Link>
    </p>
  );
}
