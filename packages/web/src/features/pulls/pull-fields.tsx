import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { TimeField } from '../../components/when-field.tsx';
import { text } from '../../lib/text.ts';
import { plannedList } from './planned-list.ts';
import type { PullTyped } from './pull-typed.ts';
import { type Desk, rigsOf } from './use-desk.ts';

interface PullFieldsProps {
  readonly desk: Desk;
  readonly typed: PullTyped;
  readonly faults: Readonly<Partial<Record<keyof PullTyped, string>>>;
  readonly onChange: (change: Partial<PullTyped>) => void;
  /** A piece the name of the file names; somebody has to say that it is so. */
  readonly proposed?: string | null;
  readonly whenHint?: string;
  /** True once the record has refused the rig for want of a certificate. */
  readonly asksOverride: boolean;
}

/** What is asked of every pull, however its force was had. */
export function PullFields(props: PullFieldsProps) {
  const { desk, typed, faults, onChange, proposed = null, whenHint, asksOverride } = props;
  const words = text.pulls.fields;
  const earlier = desk.pulls.filter(({ body }) => body.piece === typed.piece).map(({ body }) => body.pull);
  const fault = (of: keyof PullTyped) => faults[of] ?? null;
  return (
    <div className="form-fields">
      <PieceField {...{ desk, typed, onChange, proposed }} fault={fault('piece')} />
      <TextField label={words.pull} value={typed.pull} fault={fault('pull')} onChange={(pull) => onChange({ pull })} />
      <ChoiceField
        label={words.rig}
        value={typed.rig}
        fault={fault('rig')}
        empty={text.entry.form.choose}
        choices={rigsOf(desk).map(({ rig: { instrument }, isOwn }) => ({
          value: instrument,
          label: isOwn ? instrument : words.rigFromBench(instrument),
        }))}
        onChange={(rig) => onChange({ rig })}
      />
      <TextField
        label={words.operator}
        value={typed.operator}
        list={desk.people.map(({ person }) => person)}
        onChange={(operator) => onChange({ operator })}
      />
      <TimeField
        label={words.when}
        hint={whenHint}
        value={typed.when}
        fault={fault('when')}
        onChange={(when) => onChange({ when })}
      />
      <TextField
        label={words.note}
        hint={words.noteHint}
        rows={2}
        value={typed.note}
        onChange={(note) => onChange({ note })}
      />
      {earlier.length === 0 ? null : (
        <ChoiceField
          label={words.second(earlier.join(', '))}
          hint={words.secondHint}
          value={typed.second}
          fault={fault('second')}
          empty={text.entry.form.choose}
          choices={Object.entries(words.secondKinds).map(([value, label]) => ({ value, label }))}
          onChange={(second) => onChange({ second })}
        />
      )}
      {asksOverride ? (
        <TextField
          label={words.override(typed.rig)}
          hint={words.overrideHint}
          value={typed.override}
          fault={fault('override')}
          onChange={(override) => onChange({ override })}
        />
      ) : null}
    </div>
  );
}

interface PieceFieldProps extends Pick<PullFieldsProps, 'desk' | 'typed' | 'onChange'> {
  readonly proposed: string | null;
  readonly fault: string | null;
}

function PieceField({ desk, typed, onChange, proposed, fault }: PieceFieldProps) {
  const words = text.pulls.fields;
  const list = plannedList(desk);
  return (
    <div className="pulls-piece">
      <ChoiceField
        label={words.piece}
        hint={words.pieceHint}
        value={typed.piece}
        fault={fault}
        empty={text.entry.form.choose}
        choices={list.map(({ piece, pulls, isNext }) => ({
          value: piece,
          label: isNext ? words.next(piece) : pulls.length > 0 ? words.pulled(piece) : piece,
        }))}
        onChange={(piece) => onChange({ piece, second: '' })}
      />
      {proposed === null || typed.piece !== '' ? null : (
        <p className="pulls-proposed">
          {words.proposed(proposed)}{' '}
          <button type="button" className="press" onClick={() => onChange({ piece: proposed, second: '' })}>
            {words.confirm(proposed)}
          </button>
        </p>
      )}
    </div>
  );
}
