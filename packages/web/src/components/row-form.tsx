import {
  type CellValue,
  type Field,
  type Row,
  rowFaults,
  rowWith,
  type TableName,
  tables,
} from '@provinghouse/contract';
import { type ReactNode, useState } from 'react';
import { readTyped, typedText } from '../lib/entry/cell-text.ts';
import { text } from '../lib/text.ts';
import { type Choice, ChoiceField, TextField } from './form-field.tsx';

/** How one column of a table is asked for. */
export interface AskedColumn {
  readonly column: string;
  readonly label: string;
  readonly hint?: ReactNode;
  readonly unit?: string;
  /** What may be chosen, where the table itself does not say: the codes of another table. */
  readonly choices?: readonly Choice[];
  /** Several lines. */
  readonly rows?: number;
  /** What was written before, offered while typing. */
  readonly list?: readonly string[];
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
  /** A fault of the whole, e.g. a code that is taken; null keeps the key open. */
  readonly check?: (row: Row<T>) => string | null;
}

/** A form over one row of a table: each column is read as the table reads it, and its fault stands beside it once the row was meant to be kept. */
export function RowForm<T extends TableName>(props: RowFormProps<T>) {
  const { kind, asked, start, keep, onKeep, onCancel, children, check } = props;
  const given: Readonly<Record<string, CellValue | undefined>> = start;
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(asked.map(({ column }) => [column, typedText(given[column] ?? null)])),
  );
  const [isShown, setShown] = useState(false);
  const reading = readRow(kind, start, typed);
  const whole = isShown && reading.row && check ? check(reading.row) : null;
  const submit = () => {
    setShown(true);
    if (reading.row && (check?.(reading.row) ?? null) === null) onKeep(reading.row);
  };
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <div className="form-fields">
        {asked.map((one) => (
          <Column
            key={one.column}
            kind={kind}
            asked={one}
            value={typed[one.column] ?? ''}
            fault={isShown ? (reading.faults[one.column] ?? null) : null}
            onChange={(value) => setTyped((now) => ({ ...now, [one.column]: value }))}
          />
        ))}
      </div>
      {children}
      {whole === null ? null : (
        <p className="form-fault" role="alert">
          {whole}
        </p>
      )}
      <p className="form-keys">
        <button type="submit" className="press press-main">
          {keep}
        </button>
        {onCancel ? (
          <button type="button" className="press" onClick={onCancel}>
            {text.entry.form.cancel}
          </button>
        ) : null}
      </p>
    </form>
  );
}

interface RowReading<T extends TableName> {
  /** The whole row; null while anything is wrong. */
  readonly row: Row<T> | null;
  readonly faults: Readonly<Record<string, string>>;
}

/** Reads what was typed over the cells a row begins with. */
export function readRow<T extends TableName>(
  kind: T,
  start: Partial<Row<T>>,
  typed: Readonly<Record<string, string>>,
): RowReading<T> {
  const fields: Readonly<Record<string, Field>> = tables[kind].fields;
  const faults: Record<string, string> = {};
  const cells: Record<string, CellValue> = {};
  for (const [column, words] of Object.entries(typed)) {
    const field = fields[column];
    if (!field) continue;
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

interface ColumnProps {
  readonly kind: TableName;
  readonly asked: AskedColumn;
  readonly value: string;
  readonly fault: string | null;
  readonly onChange: (value: string) => void;
}

function Column({ kind, asked, value, fault, onChange }: ColumnProps) {
  const fields: Readonly<Record<string, Field>> = tables[kind].fields;
  const field = fields[asked.column];
  if (!field) return null;
  const shell = { label: asked.label, fault, ...(asked.hint === undefined ? {} : { hint: asked.hint }) };
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
  return (
    <TextField
      {...shell}
      value={value}
      type={field.type === 'date' ? 'date' : 'text'}
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
