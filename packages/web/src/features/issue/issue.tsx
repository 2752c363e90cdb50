import './issue.css';
import { type CampaignFinding, isBlind } from '@provinghouse/contract';
import { Link } from 'wouter';
import { CampaignFrame } from '../../components/campaign-frame.tsx';
import { Page, Section } from '../../components/page.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { useLedgerState } from '../../lib/requests/ledger.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { openPoints, type Point, type PointName } from './open-points.ts';

/** What leaves the house: report and data package, and what is still open before a name is put under them. */
export default function Issue({ code }: { readonly code: string }) {
  return <CampaignFrame code={code}>{(finding) => <IssuePage finding={finding} code={code} />}</CampaignFrame>;
}

function IssuePage({ finding, code }: { readonly finding: CampaignFinding; readonly code: string }) {
  const state = useLedgerState(code);
  const ledger = state.state === 'read' ? state.record : null;
  // Before the freeze nothing is hidden yet, and the server hands out both with their names.
  const isMasked = isBlind(finding.campaign);
  const words = text.issue;
  return (
    <Page title={words.title} mark={finding.campaign.title} lead={<p>{words.lead}</p>}>
      <Section label={words.points} note={words.pointsNote}>
        <ul className="issue-points">
          {openPoints(finding, ledger).map((point) => (
            <PointRow key={point.name} code={code} point={point} />
          ))}
        </ul>
      </Section>
      <Section label={words.report} note={words.reportNote}>
        <p>{words.reportWords(finding.pieces.length)}</p>
        {isMasked ? <p>{words.reportBlind}</p> : null}
        <p className="form-keys">
          <a className="press press-main" href={hrefs.report(code)}>
            {words.openReport}
          </a>
        </p>
      </Section>
      <Section label={words.package} note={words.packageNote}>
        <p>{isMasked ? words.packageBlind : words.packageWords}</p>
        {isMasked ? null : (
          <p className="form-keys">
            <a className="press" href={hrefs.package(code)}>
              {words.takePackage}
            </a>
          </p>
        )}
      </Section>
      {ledger === null ? null : (
        <Section label={words.head}>
          <p>{words.headWords}</p>
          <p className="issue-head">
            <code>{ledger.head}</code>
          </p>
        </Section>
      )}
    </Page>
  );
}

/** So many names are told in place; the rest is counted. */
const toldNames = 6;

function PointRow({ code, point }: { readonly code: string; readonly point: Point }) {
  const words = text.issue.point[point.name];
  const isSettled = point.standing === 'conforms';
  return (
    <li>
      <VerdictMark verdict={point.standing}>{text.issue.standing[point.standing]}</VerdictMark>
      <span>
        <strong>{isSettled ? words.settled : words.open}</strong>
        {isSettled ? null : <Open point={point} />}
      </span>
      {isSettled ? null : <Link href={placeOf(point.name, code)}>{text.issue.there}</Link>}
    </li>
  );
}

function Open({ point: { name, open } }: { readonly point: Point }) {
  if (name === 'doubts' || name === 'ledger')
    return (
      <ul className="soft">
        {open.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    );
  const told = open.slice(0, toldNames);
  const left = open.length - told.length;
  return (
    <span className="line soft">
      {told.join(', ')}
      {left > 0 ? ` ${text.issue.andMore(left)}` : ''}
    </span>
  );
}

function placeOf(name: PointName, code: string): string {
  const places: Readonly<Record<PointName, string>> = {
    plan: hrefs.brief(code),
    blind: hrefs.brief(code),
    gauged: hrefs.gauging(code),
    pulled: hrefs.pulls(code),
    read: hrefs.breaks(code),
    twice: hrefs.breaks(code),
    judged: hrefs.findings(code),
    memory: hrefs.brief(code),
    doubts: hrefs.findings(code),
    ledger: hrefs.ledger(code),
  };
  return places[name];
}
