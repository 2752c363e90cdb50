import './blank.css';
import type { HTMLInputTypeAttribute, RefObject } from 'react';
import { type FieldShell, FormField } from './form-field.tsx';

interface BlankProps extends FieldShell {
  readonly name?: string;
  readonly unit?: string;
  /** Drawn apart: the value comes from elsewhere. */
  readonly isLinked?: boolean;
}

interface TextBlankProps extends BlankProps {
  readonly value: string;
  readonly onText: (text: string) => void;
  /** A number with a decimal point or comma: tablets show their number keys. */
  readonly isNumber?: boolean;
  readonly type?: HTMLInputTypeAttribute;
  readonly placeholder?: string;
  readonly box?: RefObject<HTMLInputElement | null>;
  readonly onEnter?: () => void;
}

/** A field that is read with every key: for a number or a few words. */
export function TextBlank(props: TextBlankProps) {
  const { value, onText, name, unit = '', isLinked = false, isNumber = false, type = 'text', box, onEnter } = props;
  return (
    <FormField {...props}>
      {({ id, describedBy, isWrong }) => (
        <span className={isLinked ? 'form-control blank-linked' : 'form-control'}>
          <input
            id={id}
            ref={box}
            name={name}
            type={type}
            value={value}
            inputMode={isNumber ? 'decimal' : undefined}
            placeholder={props.placeholder}
            autoComplete="off"
            spellCheck={false}
            aria-describedby={describedBy}
            aria-invalid={isWrong || undefined}
            onChange={({ target }) => onText(target.value)}
            onKeyDown={({ key }) => {
              if (key === 'Enter') onEnter?.();
            }}
          />
          <UnitSign unit={unit} />
        </span>
      )}
    </FormField>
  );
}

interface ChoiceBlankProps extends BlankProps {
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly onChoose: (value: string) => void;
}

/** A field with a few values to choose from. */
export function ChoiceBlank({
  value,
  options,
  onChoose,
  name,
  unit = '',
  isLinked = false,
  ...shell
}: ChoiceBlankProps) {
  return (
    <FormField {...shell}>
      {({ id, describedBy, isWrong }) => (
        <span className={isLinked ? 'form-control blank-linked' : 'form-control'}>
          <select
            id={id}
            name={name}
            value={value}
            aria-describedby={describedBy}
            aria-invalid={isWrong || undefined}
            onChange={({ target }) => onChoose(target.value)}
          >
            {options.map(([one, words]) => (
              <option key={one} value={one}>
                {words}
              </option>
            ))}
          </select>
          <UnitSign unit={unit} />
        </span>
      )}
    </FormField>
  );
}

function UnitSign({ unit }: { readonly unit: string }) {
  return unit === '' ? null : <span className="unit">{unit}</span>;
}
