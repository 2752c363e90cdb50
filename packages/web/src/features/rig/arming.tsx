import { type Caution, cautions, type RigDesk } from '@provinghouse/contract';
import { type FormEvent, useState } from 'react';
import type { Fault } from '../../lib/request.ts';
import { rigOrders } from '../../lib/requests/rig.ts';
import { text } from '../../lib/text.ts';
import { ArmingFacts } from './arming-facts.tsx';
import { Check } from './check.tsx';
import { PieceChoice } from './piece-choice.tsx';
import { Unfinished } from './unfinished.tsx';

interface ArmingProps {
  readonly desk: RigDesk;
  readonly isDisarmed: boolean;
  readonly setDesk: (desk: RigDesk) => void;
}

const words = text.rig.arming;

/** The checklist before a pull. The server holds everything against the record again when the rig is armed. */
export function Arming({ desk, isDisarmed, setDesk }: ArmingProps) {
  return (
    <>
      <header className="rig-head">
        <h1>{text.rig.title(desk.rig)}</h1>
        <p className="soft">
          {text.rig.source} {desk.source}
        </p>
      </header>
      {isDisarmed ? <p role="status">{text.rig.disarmed}</p> : null}
      <Unfinished desk={desk} setDesk={setDesk} />
      {desk.campaigns.length === 0 ? <p>{words.noCampaign}</p> : <Checklist desk={desk} setDesk={setDesk} />}
    </>
  );
}

function Checklist({ desk, setDesk }: Omit<ArmingProps, 'isDisarmed'>) {
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
        <ArmingFacts campaign={campaign} piece={chosen} />
      </div>
      <fieldset className="cautions">
        <legend>{words.cautions}</legend>
        {cautions.map((caution) => (
          <label key={caution} className="caution">
            <input
              type="checkbox"
              checked={said.includes(caution)}
              onChange={({ target }) =>
                setSaid(target.checked ? [...said, caution] : said.filter((one) => one !== caution))
              }
            />
            <span>
              <strong>{text.rig.caution[caution].name}</strong>
              <span className="line soft">{text.rig.caution[caution].words}</span>
            </span>
            <Check holds={said.includes(caution)} words={said.includes(caution) ? words.hold : words.open} />
          </label>
        ))}
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
