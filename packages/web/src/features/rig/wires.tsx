import './wires.css';
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { AtFault, Notice, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { useDesk } from './use-desk.ts';
import { useWires, type Wires as WiresNow, type WireTestReport } from './use-wires.ts';
import { WireSource } from './wire-source.tsx';
import { WireVerdict } from './wire-verdict.tsx';

const words = text.rig.wires;

/** The wires of a rig, tested before any pull: what comes, how it reads, and whether it will do. */
export default function Wires({ rig }: { readonly rig: string }) {
  const { desk, fault, again } = useDesk(rig);
  useEffect(again, [again]);
  if (fault?.code === 'rig-unknown' || fault?.code === 'address-unknown')
    return (
      <Notice title={text.rig.unknown(rig)}>
        <p>{text.rig.unknownCure}</p>
        <p>
          <Link href={hrefs.rigs()}>{text.rig.toAll}</Link>
        </p>
      </Notice>
    );
  if (fault && !desk) return <AtFault fault={fault} again={again} />;
  if (!desk) return <Reading />;
  return <Test rig={rig} />;
}

function Test({ rig }: { readonly rig: string }) {
  const wires = useWires(rig);
  const [held, setHeld] = useState<WireTestReport | null>(null);
  const shown = held ?? wires.report;
  const isPractice = shown?.reports.some((report) => report.isPractice) === true;
  return (
    <Page
      title={words.title(rig)}
      lead={words.lead}
      aside={
        <span className="wire-ways">
          <Link className="press" href={hrefs.rig(rig)}>
            {words.toRig}
          </Link>
          <Link className="press" href={hrefs.rigs()}>
            {text.rig.toAll}
          </Link>
        </span>
      }
    >
      {isPractice ? <p className="wire-practice">{words.practice}</p> : null}
      <Section label={words.verdict}>
        <Ending wires={wires} rig={rig} />
        {wires.ending?.kind === 'refused' ? null : <WireVerdict report={shown} />}
        {shown === null || wires.ending !== null ? null : (
          <div className="wire-hold">
            <button
              type="button"
              className="press"
              aria-pressed={held !== null}
              onClick={() => setHeld(held === null ? wires.report : null)}
            >
              {held === null ? words.hold : words.goOn}
            </button>
            <span className="soft small">{words.left(leftText(shown.left_s))}</span>
          </div>
        )}
      </Section>
      {wires.ending?.kind === 'refused'
        ? null
        : shown?.reports.map((report) => <WireSource key={report.describe} report={report} />)}
    </Page>
  );
}

function Ending({
  wires: { ending, isConnected, report, again },
  rig,
}: {
  readonly wires: WiresNow;
  readonly rig: string;
}) {
  if (ending === null)
    return isConnected || report === null ? null : (
      <p className="wire-ending" role="status">
        {text.fault.offline}
      </p>
    );
  return (
    <div className="wire-ending" role="alert">
      <p>
        {ending.kind === 'refused' ? (
          <>
            <strong>{words.refused}.</strong> {ending.words}
          </>
        ) : (
          words.over[ending.why]
        )}
      </p>
      <p className="wire-ways">
        <button type="button" className="press" onClick={again}>
          {words.again}
        </button>
        <Link className="press" href={hrefs.rig(rig)}>
          {words.toRig}
        </Link>
      </p>
    </div>
  );
}

function leftText(left_s: number): string {
  return `${Math.floor(left_s / 60)}:${String(Math.floor(left_s % 60)).padStart(2, '0')}\u00a0min`;
}
