import { type ReactNode, useId } from 'react';
import type { FieldShell } from './form-field.tsx';

export interface WordedChoice {
  readonly value: string;
  readonly label: string;
  /** What choosing it means. */
  readonly words: ReactNode;
}

interface WordChoiceProps extends FieldShell {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly choices: readonly WordedChoice[];
}

/** One of a few, each with what it means beside it. */
export function WordChoice({ label, hint, fault = null, value, onChange, choices }: WordChoiceProps) {
  const id = useId();
  return (
    <fieldset
      className="word-choice"
      data-fault={fault === null ? undefined : true}
      aria-describedby={fault === null ? undefined : `${id}-fault`}
    >
      <legend>{label}</legend>
      {hint ? <p className="form-hint">{hint}</p> : null}
      {choices.map((choice, at) => (
        <label key={choice.value} className="word-choice-one">
          <input
            type="radio"
            name={id}
            value={choice.value}
            checked={value === choice.value}
            aria-describedby={`${id}-${at}`}
            onChange={() => onChange(choice.value)}
          />
          <span>
            <strong>{choice.label}</strong>
            <span className="line soft" id={`${id}-${at}`}>
              {choice.words}
            </span>
          </span>
        </label>
      ))}
      {fault === null ? null : (
        <p id={`${id}-fault`} className="form-fault" role="alert">
          {fault}
        </p>
      )}
    </fieldset>
  );
}
