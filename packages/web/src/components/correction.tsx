import {
  type CellValue,
  type Field,
  type Row,
  type RowFault,
  type RowHeld,
  type TableName,
  tables,
} from '@provinghouse/contract';
import { type ReactNode, useState } from 'react';
import { typedText } from '../lib/entry/cell-text.ts';
import type { Typed } from '../lib/entry/draft.ts';
import { correct, withdraw } from '../lib/entry/enter.ts';
import { readRows } from '../lib/entry/use-rows.ts';
import type { Fault } from '../lib/request.ts';
import { text } from '../lib/text.ts';
import { TextField } from './form-field.tsx';
import { type AskedColumn, RowForm } from './row-form.tsx';
import { SheetOver } from './sheet-over.tsx';

interface CorrectionProps<T extends TableName> {
  readonly book: string;
  readonly kind: T;
  readonly held: RowHeld<T>;
  readonly asked: readonly AskedColumn[];
  /** What it is, in words. */
  readonly what: string;
  readonly onDone: () => void;
  /** What the correction means, e.g. that it is an amendment. */
  readonly note?: ReactNode;
  /** Matter beside the fields that follows what is typed. */
  readonly beside?: (typed: Typed) => ReactNode;
  readonly check?: (row: Row<T>) => string | RowFault | null;
  /** What the record must hold before the correction does; gives in words why it could not be had, or null. */
  readonly first?: (row: Row<T>, why: string) => Promise<string | null>;
}

interface Conflict<T extends TableName> {
  readonly yours: Row<T>;
  readonly why: string;
  readonly theirs: RowHeld<T>;
}

/**
 * Corrects a row: the cells with their present values, the reason, and where somebody else was faster both versions beside each other.
 * Nothing typed is lost on the way.
 */
export function Correction<T extends TableName>(props: CorrectionProps<T>) {
  const { book, kind, asked, what, onDone, note, beside, check, first } = props;
  // As it stood when it was opened: the page may have read a newer one since, and what is typed here was not made from that.
  const [held] = useState(props.held);
  const [why, setWhy] = useState('');
  const [isAsked, setAsked] = useState(false);
  const [conflict, setConflict] = useState<Conflict<T> | null>(null);
  const [fault, setFault] = useState<Pick<Fault, 'detail'> | null>(null);
  const words = text.entry.correction;
  const send = async (body: Row<T>, revision: number) => {
    const missing = (await first?.(body, why)) ?? null;
    if (missing !== null) return setFault({ detail: missing });
    const outcome = await correct({ book, label: words.title(what) }, { kind, id: held.id, revision, body, why });
    if (outcome.kept) return onDone();
    if (outcome.fault.code !== 'record-conflict') return setFault(outcome.fault);
    const found = await readRows(book, kind);
    const theirs = 'rows' in found ? found.rows.find((row) => row.id === held.id) : undefined;
    if (theirs) setConflict({ yours: body, why, theirs });
    else setFault(outcome.fault);
  };
  return (
    <SheetOver title={words.title(what)} onClose={onDone}>
      {conflict === null ? (
        <RowForm
          kind={kind}
          asked={asked}
          start={held.body}
          keep={words.keep}
          onCancel={onDone}
          beside={beside}
          {...(check ? { check } : {})}
          onKeep={(row) => {
            setAsked(true);
            if (why.trim() !== '') void send(row, held.revision);
          }}
        >
          {note}
          <TextField
            label={words.why}
            hint={words.whyHint}
            value={why}
            fault={isAsked && why.trim() === '' ? text.entry.fault.typed('is empty, but every row needs it') : null}
            onChange={setWhy}
          />
          {fault === null ? null : (
            <p className="form-fault" role="alert">
              {fault.detail}
            </p>
          )}
        </RowForm>
      ) : (
        <Compared
          conflict={conflict}
          kind={kind}
          asked={asked}
          onKeep={() => void send(conflict.yours, conflict.theirs.revision)}
          onLeave={onDone}
        />
      )}
    </SheetOver>
  );
}

interface ComparedProps<T extends TableName> {
  readonly conflict: Conflict<T>;
  readonly kind: T;
  readonly asked: readonly AskedColumn[];
  readonly onKeep: () => void;
  readonly onLeave: () => void;
}

function Compared<T extends TableName>({ conflict, kind, asked, onKeep, onLeave }: ComparedProps<T>) {
  const words = text.entry.correction;
  const fields: Readonly<Record<string, Field>> = tables[kind].fields;
  const yours: Readonly<Record<string, CellValue>> = conflict.yours;
  const theirs: Readonly<Record<string, CellValue>> = conflict.theirs.body;
  const shown = (cells: typeof yours, column: string) => typedText(fields[column], cells[column]) || text.none;
  const columns = Object.keys(fields).filter((column) => yours[column] !== theirs[column]);
  const labelOf = (column: string) => asked.find((one) => one.column === column)?.label ?? column;
  return (
    <div role="alert">
      <p>{words.conflict(conflict.theirs.who, conflict.theirs.at)}</p>
      <table className="leaf">
        <thead>
          <tr>
            <th scope="col">{words.column}</th>
            <th scope="col">{words.theirs}</th>
            <th scope="col">{words.yours}</th>
          </tr>
        </thead>
        <tbody>
          {columns.map((column) => (
            <tr key={column}>
              <th scope="row">{labelOf(column)}</th>
              <td>{shown(theirs, column)}</td>
              <td>{shown(yours, column)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="form-keys">
        <button type="button" className="press press-main" onClick={onKeep}>
          {words.keepYours}
        </button>
        <button type="button" className="press" onClick={onLeave}>
          {words.leaveTheirs}
        </button>
      </p>
    </div>
  );
}

interface WithdrawalProps {
  readonly book: string;
  readonly kind: TableName;
  readonly held: RowHeld;
  readonly what: string;
  readonly onDone: () => void;
}

/** Takes a row out of the record, with the reason. */
export function Withdrawal({ book, kind, held: heldNow, what, onDone }: WithdrawalProps) {
  const [held] = useState(heldNow);
  const [why, setWhy] = useState('');
  const [fault, setFault] = useState<Fault | null>(null);
  const words = text.entry.correction;
  const send = async () => {
    const { id, revision } = held;
    const outcome = await withdraw({ book, label: words.withdrawTitle(what) }, { kind, id, revision, why });
    if (outcome.kept) onDone();
    else setFault(outcome.fault);
  };
  return (
    <SheetOver title={words.withdrawTitle(what)} onClose={onDone}>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          if (why.trim() !== '') void send();
        }}
      >
        <TextField
          label={words.withdrawWhy}
          hint={words.whyHint}
          value={why}
          fault={fault?.detail ?? null}
          onChange={setWhy}
        />
        <p className="form-keys">
          <button type="submit" className="press press-main" disabled={why.trim() === ''}>
            {words.withdraw}
          </button>
          <button type="button" className="press" onClick={onDone}>
            {text.entry.form.cancel}
          </button>
        </p>
      </form>
    </SheetOver>
  );
}
