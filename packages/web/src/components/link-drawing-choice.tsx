import './link-drawing.css';
import { type ReactNode, useId } from 'react';

/** One of the things a drawing lets one choose. */
export interface DrawnOption {
  readonly value: string;
  readonly label: string;
  /** The key that chooses it, shown as a key; null where none does. */
  readonly letter: string | null;
  /** How to tell it. */
  readonly words?: ReactNode;
  /** Its part of the drawing above, as a path. */
  readonly region?: string;
  /** Its own drawing. */
  readonly picture?: ReactNode;
}

interface DrawnChoiceProps {
  readonly label: string;
  readonly hint?: ReactNode;
  readonly fault?: string | null;
  readonly value: string | null;
  readonly onChange: (value: string) => void;
  readonly options: readonly DrawnOption[];
  /** A drawing whose regions are the options. */
  readonly drawing?: { readonly viewBox: string; readonly alt: string; readonly content: ReactNode };
  /** `beside`: options beside the drawing; `below`: in a row below it; `pictures`: each with its own. */
  readonly layout: 'beside' | 'below' | 'pictures';
}

/** One of a few, chosen on a drawing: a press on its region, on its name, by arrow keys or by its letter. Each is a radio button. */
export function DrawnChoice(props: DrawnChoiceProps) {
  const { label, hint, fault = null, value, onChange, options, drawing, layout } = props;
  const id = useId();
  return (
    <fieldset
      className={`drawn drawn-${layout}`}
      data-fault={fault === null ? undefined : true}
      aria-describedby={fault === null ? undefined : `${id}-fault`}
    >
      <legend>{label}</legend>
      {hint ? <p className="form-hint">{hint}</p> : null}
      {fault === null ? null : (
        <p id={`${id}-fault`} className="form-fault" role="alert">
          {fault}
        </p>
      )}
      <div className="drawn-stage">
        {drawing === undefined ? null : (
          <svg className="drawn-base" viewBox={drawing.viewBox} role="img" aria-label={drawing.alt}>
            {drawing.content}
          </svg>
        )}
        <div className="drawn-options">
          {options.map((option, at) => (
            <Option
              key={option.value}
              option={option}
              group={id}
              id={`${id}-${at}`}
              isChosen={option.value === value}
              {...(drawing === undefined ? {} : { viewBox: drawing.viewBox })}
              onChoose={() => onChange(option.value)}
            />
          ))}
        </div>
      </div>
    </fieldset>
  );
}

interface OptionProps {
  readonly option: DrawnOption;
  readonly group: string;
  readonly id: string;
  readonly isChosen: boolean;
  readonly viewBox?: string;
  readonly onChoose: () => void;
}

function Option({ option, group, id, isChosen, viewBox, onChoose }: OptionProps) {
  const { label, letter, words, region, picture } = option;
  const wordsId = words === undefined ? undefined : `${id}-words`;
  return (
    <label className="drawn-one" htmlFor={id}>
      {region === undefined ? null : (
        <svg className="drawn-region" viewBox={viewBox} aria-hidden="true">
          <path d={region} />
        </svg>
      )}
      <span className="drawn-head">
        <input
          id={id}
          type="radio"
          name={group}
          value={option.value}
          checked={isChosen}
          aria-labelledby={`${id}-name`}
          aria-describedby={wordsId}
          onChange={onChoose}
        />
        {letter === null ? null : <kbd>{letter.toUpperCase()}</kbd>}
        <span className="drawn-name" id={`${id}-name`}>
          {label}
        </span>
      </span>
      {picture === undefined ? null : <span className="drawn-picture">{picture}</span>}
      {words === undefined ? null : (
        <span className="drawn-words" id={wordsId}>
          {words}
        </span>
      )}
    </label>
  );
}
