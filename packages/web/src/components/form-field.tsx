import { type ReactNode, useId } from 'react';

export interface FieldShell {
  readonly label: string;
  readonly hint?: ReactNode;
  /** What is wrong with what stands there now, with its cure; null while nothing is. */
  readonly fault?: string | null;
}

interface ShellIds {
  readonly id: string;
  readonly describedBy: string | undefined;
  readonly isWrong: boolean;
}

/** A label, the control it names, and below it what to know and what is wrong. */
export function FormField(props: FieldShell & { readonly children: (ids: ShellIds) => ReactNode }) {
  const { label, hint, fault = null, children } = props;
  const id = useId();
  const hintId = hint ? `${id}-hint` : null;
  const faultId = fault === null ? null : `${id}-fault`;
  const describedBy = [hintId, faultId].filter((one) => one !== null).join(' ') || undefined;
  return (
    <div className="form-field">
      <label htmlFor={id}>{label}</label>
      {children({ id, describedBy, isWrong: fault !== null })}
      {hintId === null ? null : (
        <p id={hintId} className="form-hint">
          {hint}
        </p>
      )}
      {faultId === null ? null : (
        <p id={faultId} className="form-fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}

interface TextFieldProps extends FieldShell {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Shown behind the field, e.g. a unit. */
  readonly unit?: string;
  readonly isNumber?: boolean;
  readonly list?: readonly string[];
  readonly rows?: number;
  readonly onEnter?: () => void;
}

/** A field of text or a number (decimal point or comma). */
export function TextField(props: TextFieldProps) {
  const { value, onChange, unit, isNumber = false, list, rows, onEnter } = props;
  const listId = useId();
  return (
    <FormField {...props}>
      {({ id, describedBy, isWrong }) => (
        <span className="form-control">
          {rows === undefined ? (
            <input
              id={id}
              type="text"
              value={value}
              inputMode={isNumber ? 'decimal' : undefined}
              className={isNumber ? 'number' : undefined}
              autoComplete="off"
              list={list === undefined ? undefined : listId}
              aria-describedby={describedBy}
              aria-invalid={isWrong || undefined}
              onChange={(event) => onChange(event.currentTarget.value)}
              onKeyDown={(event) => {
                if (event.key === 'Enter' && onEnter) {
                  event.preventDefault();
                  onEnter();
                }
              }}
            />
          ) : (
            <textarea
              id={id}
              rows={rows}
              value={value}
              aria-describedby={describedBy}
              aria-invalid={isWrong || undefined}
              onChange={(event) => onChange(event.currentTarget.value)}
            />
          )}
          {unit === undefined ? null : <span className="unit">{unit}</span>}
          {list === undefined ? null : (
            <datalist id={listId}>
              {list.map((one) => (
                <option key={one} value={one} />
              ))}
            </datalist>
          )}
        </span>
      )}
    </FormField>
  );
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface ChoiceFieldProps extends FieldShell {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly choices: readonly Choice[];
  /** What stands there while nothing is chosen; left out, one must be. */
  readonly empty?: string;
}

/** One of a few. */
export function ChoiceField(props: ChoiceFieldProps) {
  const { value, onChange, choices, empty } = props;
  return (
    <FormField {...props}>
      {({ id, describedBy, isWrong }) => (
        <select
          id={id}
          value={value}
          aria-describedby={describedBy}
          aria-invalid={isWrong || undefined}
          onChange={(event) => onChange(event.currentTarget.value)}
        >
          {empty === undefined ? null : <option value="">{empty}</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
