import './wires.css';
import type { RigDesk } from '@provinghouse/contract';
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { AtFault, Reading } from '../../components/notice.tsx';
import { Page, Section } from '../../components/page.tsx';
import { type Fault, readRecord } from '../../lib/request.ts';
import { rigsAddress } from '../../lib/requests/rig.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

const words = text.rig.list;
const askEvery_ms = 5000;

/** The rigs of the bench with what each is doing, and the ways to each. */
export default function Rigs() {
  const { desks, fault, again } = useDesks();
  if (fault && !desks) return <AtFault fault={fault} again={again} />;
  if (!desks) return <Reading />;
  return (
    <Page title={words.title} lead={words.lead}>
      <Section label={words.label}>
        {desks.length === 0 ? (
          <>
            <p>{words.none}</p>
            <p className="soft">{words.noneCure}</p>
          </>
        ) : (
          <ul className="rig-list">
            {desks.map((desk) => (
              <RigRow key={desk.rig} desk={desk} />
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}

function RigRow({ desk }: { readonly desk: RigDesk }) {
  const isTaken = desk.pull !== null && desk.pull.state !== 'ended';
  return (
    <li className="rig-row">
      <div>
        <h3>
          <Link href={hrefs.rig(desk.rig)}>{desk.rig}</Link>
          {desk.isPractice ? <span className="rig-mark">{words.practice}</span> : null}
        </h3>
        <p className="soft small">
          {words.from} {desk.source}
        </p>
      </div>
      <div>
        <p className={isTaken ? 'rig-taken' : undefined}>{stateOf(desk)}</p>
        {desk.unfinished.length === 0 ? null : (
          <p className="rig-waits">{words.state.unfinished(desk.unfinished.length)}</p>
        )}
        <p className="soft small">{piecesText(desk)}</p>
      </div>
      <p className="wire-ways">
        <Link className="press" href={hrefs.rig(desk.rig)} aria-label={`${wayWords(desk)}: ${desk.rig}`}>
          {wayWords(desk)}
        </Link>
        {isTaken ? null : (
          <Link className="press" href={hrefs.wires(desk.rig)} aria-label={`${text.rig.wires.link}: ${desk.rig}`}>
            {text.rig.wires.link}
          </Link>
        )}
      </p>
    </li>
  );
}

function piecesText({ campaigns }: RigDesk): string {
  const names = (some: RigDesk['campaigns']) => some.map(({ campaign }) => campaign).join(', ');
  const toPull = campaigns.filter(({ pieces }) => pieces.some(({ isPulled }) => !isPulled));
  const free = toPull.flatMap(({ pieces }) => pieces.filter(({ isPulled }) => !isPulled)).length;
  if (campaigns.length === 0) return words.noCampaign;
  return free === 0 ? words.noPiece(names(campaigns)) : words.pieces(free, names(toPull));
}

function stateOf({ pull }: RigDesk): string {
  if (pull === null || pull.state === 'ended') return words.state.free;
  return words.state[pull.state](pull.piece, pull.pull);
}

function wayWords({ pull, unfinished }: RigDesk): string {
  if (pull !== null && pull.state !== 'ended') return words.watch;
  return unfinished.length > 0 ? words.finish : words.arm;
}

/** Asked anew every few seconds while somebody looks. */
function useDesks() {
  const [desks, setDesks] = useState<readonly RigDesk[] | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [round, setRound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round asks at once
  useEffect(() => {
    let isLeft = false;
    const ask = async () => {
      const reply = await readRecord<readonly RigDesk[]>(rigsAddress);
      if (isLeft) return;
      if (reply.ok) setDesks(reply.record);
      setFault(reply.ok ? null : reply.fault);
    };
    void ask();
    const timer = setInterval(() => {
      if (document.visibilityState === 'visible') void ask();
    }, askEvery_ms);
    return () => {
      isLeft = true;
      clearInterval(timer);
    };
  }, [round]);
  return { desks, fault, again: () => setRound(round + 1) };
}
