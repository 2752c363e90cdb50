import './start.css';
import { Link } from 'wouter';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { usePerson } from '../../lib/entry/person.ts';
import { useCampaigns } from '../../lib/requests/campaigns.ts';
import { useFinding } from '../../lib/requests/finding.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { type StartStep, useSteps } from '../../lib/visits.ts';

/** The guided start: seven steps through a campaign of the record, ticked off as they are taken. */
export default function Start() {
  const campaigns = useCampaigns();
  if (campaigns.state === 'reading') return <Reading />;
  if (campaigns.state === 'at fault') return <AtFault fault={campaigns.fault} again={campaigns.again} />;
  // The one with most pieces pulled shows most.
  const [shown] = [...campaigns.record.campaigns].sort((a, b) => b.pulled - a.pulled);
  return (
    <Page title={text.start.title} lead={<p>{text.start.lead}</p>}>
      {shown ? <WithPiece code={shown.campaign} /> : <Steps code={null} piece={null} />}
    </Page>
  );
}

function WithPiece({ code }: { readonly code: string }) {
  const finding = useFinding(code);
  const piece = finding.state === 'read' ? finding.record.pieces.find(({ pull }) => pull !== null) : undefined;
  return <Steps code={code} piece={piece?.piece ?? null} />;
}

interface StepsProps {
  readonly code: string | null;
  readonly piece: string | null;
}

function Steps({ code, piece }: StepsProps) {
  const taken = useSteps();
  const isNamed = usePerson() !== null;
  const steps = stepsOf(code, piece);
  const isDone = (step: StartStep) => (step === 'who' ? isNamed : taken.includes(step));
  const done = steps.filter(({ step }) => isDone(step)).length;
  return (
    <Section label={text.start.steps} note={text.start.of(done, steps.length)}>
      <ol className="start-steps">
        {steps.map(({ step, href }, at) => (
          <li key={step} className={isDone(step) ? 'start-done' : undefined}>
            <span className="start-number">{at + 1}</span>
            <div>
              <h3>{text.start.step[step].title}</h3>
              <p className="soft">{text.start.step[step].words}</p>
            </div>
            {isDone(step) ? <span className="verdict verdict-conforms">{text.start.done}</span> : null}
            {href === null ? null : (
              <Link className="press" href={href}>
                {text.start.open}
                <span className="for-ears">: {text.start.step[step].title}</span>
              </Link>
            )}
          </li>
        ))}
      </ol>
    </Section>
  );
}

function stepsOf(code: string | null, piece: string | null): readonly { step: StartStep; href: string | null }[] {
  return [
    { step: 'who', href: null },
    ...(code === null
      ? []
      : [
          { step: 'board' as const, href: hrefs.board(code) },
          ...(piece === null ? [] : [{ step: 'piece' as const, href: hrefs.piece(code, piece) }]),
          { step: 'findings' as const, href: hrefs.findings(code) },
          { step: 'ledger' as const, href: hrefs.ledger(code) },
        ]),
    { step: 'reckoner', href: hrefs.reckoner() },
    { step: 'own', href: hrefs.newCampaign() },
  ];
}
