import type { Caution, RigDesk } from '@provinghouse/contract';
import { type FormEvent, useState } from 'react';
import { Link } from 'wouter';
import type { Fault } from '../../lib/request.ts';
import { rigOrders } from '../../lib/requests/rig.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { ArmingFacts } from './arming-facts.tsx';
import { CautionList } from './caution-list.tsx';
import { PieceChoice } from './piece-choice.tsx';
import { Unfinished } from './unfinished.tsx';

interface ArmingProps {
  readonly desk: RigDesk;
  readonly isDisarmed: boolean;
  /** How far a recording that waited is kept, 0 to 1; null when none is. */
  readonly keeping: number | null;
  readonly setDesk: (desk: RigDesk) => void;
}

const words = text.rig.arming;

/** The checklist before a pull. The server holds everything against the record again when the rig is armed. */
export function Arming({ desk, isDisarmed, keeping, setDesk }: ArmingProps) {
  // Two checklists at once would be mixed up.
  const [goingOn, setGoingOn] = useState<string | null>(null);
  return (
    <>
      <header className="rig-head">
        <h1>{text.rig.title(desk.rig)}</h1>
        <p className="soft">
          {text.rig.source} {desk.source}
        </p>
        <nav className="rig-ways" aria-label={text.rig.title(desk.rig)}>
          <Link href={hrefs.wires(desk.rig)}>{text.rig.wires.link}</Link>
          <Link href={hrefs.rigs()}>{text.rig.toAll}</Link>
        </nav>
      </header>
      {isDisarmed ? <p role="status">{text.rig.disarmed}</p> : null}
      <Unfinished desk={desk} keeping={keeping} goingOn={goingOn} onGoingOn={setGoingOn} setDesk={setDesk} />
      {goingOn !== null ? null : desk.campaigns.length === 0 ? (
        <p>{words.noCampaign}</p>
      ) : (
        <Checklist desk={desk} setDesk={setDesk} />
      )}
    </>
  );
}

function Checklist({ desk, setDesk }: Pick<ArmingProps, 'desk' | 'setDesk'>) {
  const [code, setCode] = useState(desk.campaigns.find(hasFree)?.campaign ?? desk.campaigns[0]?.campaign ?? '');
  const [piece, setPiece] = useState('');
  const [confirmed, setConfirmed] = useState('');
  const [operator, setOperator] = useState('');
  const [said, setSaid] = useState<readonly Caution[]>([]);
  const [fault, setFault] = useState<Fault | null>(null);
  const [isArming, setArming] = useState(false);
  const campaign = desk.campaigns.find((one) => one.campaign === code);
  const chosen = campaign?.pieces.find((one) => one.piece === piece) ?? null;
  if (!campaign) return null;
  const arm = async (event: FormEvent) => {
    event.preventDefault();
    setArming(true);
    const input = { campaign: code, piece, confirmed, operator: operator === '' ? null : operator, cautions: said };
    const reply = await rigOrders.arm(desk.rig, input);
    setArming(false);
    setFault(reply.ok ? null : reply.fault);
    if (reply.ok) setDesk(reply.record);
  };
  return (
    <form className="arming" onSubmit={(event) => void arm(event)} aria-label={words.label}>
      <div className="arming-choice">
        <PieceChoice
          desk={desk}
          campaign={campaign}
          chosen={chosen}
          confirmed={confirmed}
          operator={operator}
          onCampaign={(next) => {
            setCode(next);
            setPiece('');
            setOperator('');
          }}
          onPiece={setPiece}
          onConfirmed={setConfirmed}
          onOperator={setOperator}
        />
        <ArmingFacts desk={desk} campaign={campaign} piece={chosen} />
      </div>
      <fieldset className="cautions">
        <legend>{words.cautions}</legend>
        <CautionList said={said} onSaid={setSaid} />
        <button type="submit" className="rig-key rig-key-arm" disabled={isArming}>
          {isArming ? words.arming : words.arm}
        </button>
        <p className="arming-fault" role="alert">
          {fault?.detail ?? ''}
        </p>
      </fieldset>
    </form>
  );
}

function hasFree({ pieces }: RigDesk['campaigns'][number]): boolean {
  return pieces.some((piece) => !piece.isPulled);
}
