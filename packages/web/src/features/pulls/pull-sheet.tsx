import type { Row, RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { Link } from 'wouter';
import { Correction } from '../../components/correction.tsx';
import { TextField } from '../../components/form-field.tsx';
import type { AskedColumn } from '../../components/row-form.tsx';
import { SheetOver } from '../../components/sheet-over.tsx';
import { fileAddress } from '../../lib/entry/book.ts';
import { correctCells } from '../../lib/entry/enter.ts';
import { figureText } from '../../lib/figure.ts';
import type { Fault } from '../../lib/request.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { whenText } from './pull-list.tsx';

interface PullSheetProps {
  readonly code: string;
  readonly held: RowHeld<'pulls'>;
  /** Reads the rows again: somebody else was faster. */
  readonly onChanged: () => void;
  readonly onClose: () => void;
}

/** What is keyed and may be mistaken; a recording and its columns are not among it. */
function askedOf({ trace }: Row<'pulls'>): AskedColumn[] {
  const words = text.pulls;
  return [
    { column: 'operator', label: words.fields.operator },
    { column: 'pulled_at', label: words.fields.when },
    { column: 'rig', label: words.fields.rig },
    ...(trace === null
      ? [
          { column: 'panel_maximum_kN', label: words.panel.maximum, unit: 'kN' },
          { column: 'panel_uncertainty_kN', label: words.panel.uncertainty, unit: 'kN' },
        ]
      : []),
  ];
}

/** One pull opened: everything is annotated here and nothing edited away. */
export function PullSheet({ code, held, onChanged, onClose }: PullSheetProps) {
  const words = text.pulls.one;
  const { body } = held;
  const [isCorrecting, setCorrecting] = useState(false);
  if (isCorrecting)
    return (
      <Correction
        book={code}
        kind="pulls"
        held={held}
        asked={askedOf(body)}
        what={words.what(body.pull)}
        onDone={() => setCorrecting(false)}
      />
    );
  return (
    <SheetOver title={words.title(body.pull, body.piece)} onClose={onClose}>
      <Facts code={code} held={held} />
      <NoteForm code={code} held={held} onChanged={onChanged} />
      <ValidityForm code={code} held={held} onChanged={onChanged} key={String(body.valid)} />
      <p className="form-keys">
        <button type="button" className="press" onClick={() => setCorrecting(true)}>
          {words.correct}
        </button>
        <button type="button" className="press" onClick={onClose}>
          {words.close}
        </button>
      </p>
    </SheetOver>
  );
}

function Facts({ code, held }: { readonly code: string; readonly held: RowHeld<'pulls'> }) {
  const { facts, written, toPiece, file, sealed } = text.pulls.one;
  const { body } = held;
  const columns = [body.time_column, body.force_column, body.table_column, body.extension_column];
  const panel =
    body.panel_maximum_kN === null
      ? null
      : figureText({ value: body.panel_maximum_kN, unit: 'kN', uncertainty: body.panel_uncertainty_kN });
  const told: readonly (readonly [string, string | null])[] = [
    [facts.rig, body.rig],
    [facts.by, body.operator ?? text.notRecorded],
    [facts.when, whenText(body.pulled_at)],
    [facts.panel, panel],
    [facts.columns, columns.filter((one) => one !== null).join(', ') || null],
    [facts.note, body.note],
    [facts.invalid, body.valid ? null : (body.invalid_reason ?? '')],
    [facts.written, written(held.who, whenText(held.at), held.revision)],
  ];
  return (
    <>
      <dl className="facts">
        {told.map(([name, value]) =>
          value === null ? null : (
            <div key={name} className="fact">
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
        )}
      </dl>
      <p className="pulls-links">
        <Link href={hrefs.piece(code, body.piece)}>{toPiece}</Link>
        {body.trace === null ? null : (
          <>
            <a href={fileAddress(code, body.trace)} download>
              {file}
            </a>{' '}
            <span className="soft">{sealed}</span>
          </>
        )}
      </p>
    </>
  );
}

interface OwnFormProps extends Pick<PullSheetProps, 'code' | 'held' | 'onChanged'> {}

/** Sends a change of some cells; where somebody else was faster, what was typed stays and theirs is read. */
function useChange({ code, held, onChanged }: OwnFormProps) {
  const [told, setTold] = useState<string | null>(null);
  const [isOnItsWay, setOnItsWay] = useState(false);
  const change = async (cells: Partial<Row<'pulls'>>, why: string): Promise<boolean> => {
    setOnItsWay(true);
    const at = { book: code, label: text.entry.correction.title(text.pulls.one.what(held.body.pull)) };
    const outcome = await correctCells(at, held, { kind: 'pulls', cells, why });
    setOnItsWay(false);
    setTold(outcome.kept ? null : faultText(outcome.fault));
    if (!outcome.kept && outcome.fault.code === 'record-conflict') onChanged();
    return outcome.kept;
  };
  return { change, told, isOnItsWay };
}

function faultText(fault: Fault): string {
  return fault.code === 'record-conflict' ? text.pulls.one.conflict : fault.detail;
}

function NoteForm(props: OwnFormProps) {
  const words = text.pulls.one;
  const { note: held } = props.held.body;
  const [note, setNote] = useState(held ?? '');
  const { change, told, isOnItsWay } = useChange(props);
  const isSame = note.trim() === (held ?? '');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isSame) void change({ note: note.trim() || null }, words.noteWhy);
      }}
    >
      <TextField label={words.note} hint={words.noteHint} rows={3} value={note} fault={told} onChange={setNote} />
      <p className="form-keys">
        <button type="submit" className="press press-main" disabled={isSame || isOnItsWay}>
          {words.keepNote}
        </button>
      </p>
    </form>
  );
}

function ValidityForm(props: OwnFormProps) {
  const words = text.pulls.one;
  const { valid } = props.held.body;
  const [why, setWhy] = useState('');
  const [isAsked, setAsked] = useState(false);
  const { change, told, isOnItsWay } = useChange(props);
  const reason = why.trim();
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        setAsked(true);
        if (reason === '') return;
        void change(valid ? { valid: false, invalid_reason: reason } : { valid: true, invalid_reason: null }, reason);
      }}
    >
      <TextField
        label={valid ? words.invalidWhy : words.validWhy}
        hint={valid ? words.invalidHint : undefined}
        value={why}
        fault={told ?? (isAsked && reason === '' ? words.invalidMissing : null)}
        onChange={setWhy}
      />
      <p className="form-keys">
        <button type="submit" className="press" disabled={isOnItsWay}>
          {valid ? words.invalid : words.valid}
        </button>
      </p>
    </form>
  );
}
