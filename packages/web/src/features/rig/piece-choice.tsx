import type { CampaignAtRig, PieceAtRig, RigDesk } from '@provinghouse/contract';
import { useId } from 'react';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { Check } from './check.tsx';

interface PieceChoiceProps {
  readonly desk: RigDesk;
  readonly campaign: CampaignAtRig;
  readonly chosen: PieceAtRig | null;
  readonly confirmed: string;
  readonly operator: string;
  readonly onCampaign: (campaign: string) => void;
  readonly onPiece: (piece: string) => void;
  readonly onConfirmed: (code: string) => void;
  readonly onOperator: (person: string) => void;
}

const words = text.rig.arming;

/** Which piece is in the rig, said twice: chosen from the list and read off its tag. */
export function PieceChoice(props: PieceChoiceProps) {
  const { desk, campaign, chosen } = props;
  const free = campaign.pieces.filter((piece) => !piece.isPulled);
  return (
    <div className="fields">
      {desk.campaigns.length > 1 ? (
        <Choice
          label={words.campaign}
          value={campaign.campaign}
          onChoose={props.onCampaign}
          options={desk.campaigns.map((one) => [one.campaign, `${one.campaign}: ${one.title}`])}
        />
      ) : null}
      {free.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <Choice
          label={words.piece}
          value={chosen?.piece ?? ''}
          onChoose={props.onPiece}
          options={[['', words.choose], ...free.map(pieceOption)]}
        />
      )}
      <Confirmation chosen={chosen} confirmed={props.confirmed} onConfirmed={props.onConfirmed} />
      <Choice
        label={words.operator}
        value={props.operator}
        onChoose={props.onOperator}
        options={[['', words.nobody], ...campaign.people.map(({ person, name }) => [person, name] as const)]}
      />
    </div>
  );
}

function pieceOption({ piece, nominalSize_mm, links }: PieceAtRig): readonly [string, string] {
  return [piece, `${piece} (${words.pieceWords(`${nominalSize_mm}\u00a0mm`, links)})`];
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly onChoose: (value: string) => void;
}

function Choice({ label, value, options, onChoose }: ChoiceProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={({ target }) => onChoose(target.value)}>
        {options.map(([one, name]) => (
          <option key={one} value={one}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}

/** A scanner types the code and presses Enter, which must not arm the rig. */
export function Confirmation({
  chosen,
  confirmed,
  onConfirmed,
}: Pick<PieceChoiceProps, 'confirmed' | 'onConfirmed'> & { readonly chosen: Pick<PieceAtRig, 'piece'> | null }) {
  const how = useId();
  const field = useId();
  const holds = chosen !== null && confirmed.trim().toUpperCase() === chosen.piece.toUpperCase();
  return (
    <div className="field">
      <label htmlFor={field}>{words.confirm}</label>
      <input
        id={field}
        type="text"
        value={confirmed}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        aria-describedby={how}
        onChange={({ target }) => onConfirmed(target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.preventDefault();
        }}
      />
      <p className="soft small" id={how}>
        {words.confirmHow}
      </p>
      {confirmed.trim() === '' || chosen === null ? null : (
        <p>
          <Check holds={holds} words={holds ? words.confirmed : words.differs} />
        </p>
      )}
    </div>
  );
}

export function forceText(force_kN: number): string {
  return figureText({ value: force_kN, unit: 'kN' });
}
