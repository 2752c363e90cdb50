import {
  type CellValue,
  type Field,
  type Row,
  type RowFault,
  rowFaults,
  rowWith,
  type TableName,
  tables,
} from '@provinghouse/contract';
import { type ReactNode, useRef, useState } from 'react';
import { readTyped, typedText } from '../lib/entry/cell-text.ts';
import { type Typed, useDraft } from '../lib/entry/draft.ts';
import { text } from '../lib/text.ts';
import { type Choice, ChoiceField, type FieldShell, TextField } from './form-field.tsx';
import { FormKeys } from './form-keys.tsx';
import { DayField, TimeField } from './when-field.tsx';

/** What a control of its own is given: its own text, and the whole form where one field hangs on another. */
export interface OwnControl extends FieldShell {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly typed: Typed;
  readonly onOther: (column: string, value: string) => void;
}

/** How one column of a table is asked for. */
export interface AskedColumn {
  readonly column: string;
  readonly label: string;
  readonly hint?: ReactNode;
  readonly unit?: string;
  /** What may be chosen, where the table itself does not say: the codes of another table. */
  readonly choices?: readonly Choice[];
  /** A day that is most often the one it is entered on: a key writes it. */
  readonly isOftenToday?: boolean;
  /** Several lines. */
  readonly rows?: number;
  /** What was written before, offered while typing. */
  readonly list?: readonly string[];
  /** In place of the usual field. */
  readonly control?: (given: OwnControl) => ReactNode;
  /** Takes the whole width of the form. */
  readonly isWide?: boolean;
}

interface RowFormProps<T extends TableName> {
  readonly kind: T;
  readonly asked: readonly AskedColumn[];
  /** Cells as they stand when the form opens, asked for or not. */
  readonly start: Partial<Row<T>>;
  readonly keep: string;
  readonly onKeep: (row: Row<T>) => void;
  readonly onCancel?: () => void;
  /** Further matter between the fields and the keys. */
  readonly children?: ReactNode;
  /** A fault of a sound row: of one column, e.g. a code that is taken, or in words of the whole; null lets it be kept. */
  readonly check?: (row: Row<T>) => string | RowFault | null;
  /** Matter beside the fields that follows what is typed. */
  readonly beside?: ((typed: Typed) => ReactNode) | undefined;
  /** Under this name what is typed outlives a reload until `dropDraft`. */
  readonly draft?: string;
  /** True while the last press of the key is being answered: it counts once. */
  readonly isBusy?: boolean;
}

/** A form over one row of a table: each column is read as the table reads it, and its fault stands beside it once the row was meant to be kept. */
export function RowForm<T extends TableName>(props: RowFormProps<T>) {
  const { kind, asked, start, keep, onKeep, onCancel, children, check, beside, draft = null, isBusy = false } = props;
  const given: Readonly<Record<string, CellValue | undefined>> = start;
  const fields: Readonly<Record<string, Field>> = tables[kind].fields;
  const opening = Object.fromEntries(asked.map(({ column }) => [column, typedText(fields[column], given[column])]));
  const [typed, setTyped] = useDraft(draft, opening);
  const form = useRef<HTMLFormElement>(null);
  const [isShown, setShown] = useState(false);
  const reading = readRow(kind, start, typed);
  const checked = reading.row && check ? check(reading.row) : null;
  const whole = isShown && typeof checked === 'string' ? checked : null;
  const further = checked !== null && typeof checked === 'object' ? { [checked.column]: checked.fault } : {};
  const submit = () => {
    if (isBusy) return;
    setShown(true);
    if (reading.row !== null && checked === null) onKeep(reading.row);
    else setTimeout(() => toFirstFault(form.current));
  };
  const put = (column: string, value: string) => setTyped((now) => ({ ...now, [column]: value }));
  const columns = (
    <Columns
      kind={kind}
      asked={asked}
      typed={typed}
      faults={isShown ? { ...reading.faults, ...further } : {}}
      onChange={put}
    />
  );
  return (
    <form
      ref={form}
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      {beside ? (
        <div className="form-pair">
          {columns}
          {beside(typed)}
        </div>
      ) : (
        columns
      )}
      {children}
      {whole === null ? null : (
        <p className="form-fault" role="alert">
          {whole}
        </p>
      )}
      <FormKeys keep={keep} isBusy={isBusy} onCancel={onCancel} />
    </form>
  );
}

/** Whoever keeps a form with something wrong in it is set down at the first field that is. */
export function toFirstFault(form: HTMLFormElement | null): void {
  const found = form?.querySelector<HTMLElement>('[aria-invalid="true"], [data-fault] input');
  found?.focus();
  found?.closest('fieldset')?.scrollIntoView({ block: 'nearest' });
}

interface RowReading<T extends TableName> {
  /** The whole row; null while anything is wrong. */
  readonly row: Row<T> | null;
  readonly faults: Readonly<Record<string, string>>;
}

/** Reads what was typed over the cells a row begins with; a cell that nobody changed stays as it is, to the last digit of its seconds. */
export function readRow<T extends TableName>(
  kind: T,
  start: Partial<Row<T>>,
  typed: Readonly<Record<string, string>>,
): RowReading<T> {
  const fields: Readonly<Record<string, Field>> = tables[kind].fields;
  const given: Readonly<Record<string, CellValue | undefined>> = start;
  const faults: Record<string, string> = {};
  const cells: Record<string, CellValue> = {};
  for (const [column, words] of Object.entries(typed)) {
    const field = fields[column];
    if (!field || (given[column] != null && words === typedText(field, given[column]))) continue;
    const reading = readTyped(field, words);
    if (reading.ok) cells[column] = reading.value;
    else faults[column] = text.entry.fault.typed(reading.fault);
  }
  // Each cell was read by the field of its own column.
  const row = rowWith(kind, { ...start, ...cells } as Partial<Row<T>>);
  if (Object.keys(faults).length === 0)
    for (const { column, fault } of rowFaults(kind, row)) faults[column] = text.entry.fault.typed(fault);
  return { row: Object.keys(faults).length === 0 ? row : null, faults };
}

interface ColumnsProps {
  readonly kind: TableName;
  readonly asked: readonly AskedColumn[];
  readonly typed: Typed;
  readonly faults: Readonly<Record<string, string>>;
  readonly onChange: (column: string, value: string) => void;
}

function Columns({ kind, asked, typed, faults, onChange }: ColumnsProps) {
  return (
    <div className="form-fields">
      {asked.map((one) => (
        <Column
          key={one.column}
          kind={kind}
          asked={one}
          value={typed[one.column] ?? ''}
          fault={faults[one.column] ?? null}
          typed={typed}
          onChange={onChange}
        />
      ))}
    </div>
  );
}

interface ColumnProps {
  readonly kind: TableName;
  readonly asked: AskedColumn;
  readonly value: string;
  readonly fault: string | null;
  readonly typed: Typed;
  readonly onChange: (column: string, value: string) => void;
}

function Column(props: ColumnProps) {
  if (!props.asked.isWide) return <ColumnField {...props} />;
  return (
    <div className="form-wide">
      <ColumnField {...props} />
    </div>
  );
}

function ColumnField({ kind, asked, value, fault, typed, onChange: put }: ColumnProps) {
  const fields: Readonly<Record<string, Field>> = tables[kind].fields;
  const field = fields[asked.column];
  if (!field) return null;
  const onChange = (next: string) => put(asked.column, next);
  const shell = { label: asked.label, fault, ...(asked.hint === undefined ? {} : { hint: asked.hint }) };
  if (asked.control) return asked.control({ ...shell, value, onChange, typed, onOther: put });
  const choices = asked.choices ?? choicesOf(field);
  if (choices)
    return (
      <ChoiceField
        {...shell}
        value={value}
        choices={choices}
        empty={field.required ? text.entry.form.choose : text.entry.form.none}
        onChange={onChange}
      />
    );
  if (field.type === 'date')
    return <DayField {...shell} {...{ value, onChange }} isOftenToday={asked.isOftenToday ?? false} />;
  if (field.type === 'datetime') return <TimeField {...shell} {...{ value, onChange }} />;
  return (
    <TextField
      {...shell}
      value={value}
      isNumber={field.type === 'number' || field.type === 'integer'}
      {...(asked.unit === undefined ? {} : { unit: asked.unit })}
      {...(asked.rows === undefined ? {} : { rows: asked.rows })}
      {...(asked.list === undefined ? {} : { list: asked.list })}
      onChange={onChange}
    />
  );
}

function choicesOf(field: Field): readonly Choice[] | null {
  if (field.type === 'boolean')
    return [
      { value: 'true', label: text.entry.form.yes },
      { value: 'false', label: text.entry.form.no },
    ];
  return field.choices?.map((value) => ({ value, label: value })) ?? null;
}
