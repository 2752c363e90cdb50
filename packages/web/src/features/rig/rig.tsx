import './rig.css';
import { useState } from 'react';
import { Link } from 'wouter';
import { AtFault, Notice, Reading } from '../../components/notice.tsx';
import { useTitle } from '../../components/use-title.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { Arming } from './arming.tsx';
import { LiveBoard } from './live-board.tsx';
import { useDesk } from './use-desk.ts';
import { useLive } from './use-live.ts';

/** The screen of a rig: what must hold before a pull, then the pull itself, for a wall and for a hand. */
export default function Rig({ rig }: { readonly rig: string }) {
  useTitle(text.rig.title(rig));
  const { desk, fault, again, set } = useDesk(rig);
  const live = useLive(rig, again);
  const [left, setLeft] = useState<string | null>(null);
  if (fault?.code === 'rig-unknown' || fault?.code === 'address-unknown')
    return (
      <Notice title={text.rig.unknown(rig)}>
        <p>{text.rig.unknownCure}</p>
        <p>
          <Link href={hrefs.campaigns()}>{text.fault.toList}</Link>
        </p>
      </Notice>
    );
  if (fault && !desk) return <AtFault fault={fault} again={again} />;
  if (!desk) return <Reading />;
  const { armed, ended } = live.state;
  const isLeft = ended !== null && armed?.pull === left;
  const isPractice = desk.isPractice || armed?.isPractice === true;
  return (
    <div className="rig sheet">
      {isPractice ? <p className="rig-practice">{text.rig.practiceWords}</p> : null}
      {live.isConnected ? null : (
        <p className="rig-away" role="status">
          {text.rig.away}
        </p>
      )}
      {armed && !isLeft ? (
        <LiveBoard key={armed.at} desk={desk} state={live.state} setDesk={set} onNext={() => setLeft(armed.pull)} />
      ) : (
        <Arming desk={desk} isDisarmed={live.state.isDisarmed} keeping={live.state.keeping} setDesk={set} />
      )}
      <p className="rig-foot">{text.rig.disclaimer}</p>
    </div>
  );
}
