import type { CampaignFinding } from '@provinghouse/contract';
import { type Quantity, quantityNames } from '@provinghouse/core';
import { FormField } from '../../components/form-field.tsx';
import { text } from '../../lib/text.ts';
import type { AddressStep } from '../../lib/use-address-state.ts';
import { verdicts } from '../../lib/verdicts.ts';
import { isFiltered, requirementsOf, type Shown, type View } from './view.ts';

interface FilterBarProps {
  readonly finding: CampaignFinding;
  readonly view: View;
  readonly shown: Shown;
  readonly onView: (view: View, step?: AddressStep) => void;
}

/** What is shown of the findings; the address of the page keeps it. */
export function FilterBar({ finding, view, shown, onView }: FilterBarProps) {
  const words = text.findings.filter;
  const choose = (change: Partial<View>) => onView({ ...view, ...change }, 'push');
  return (
    <search className="findings-filter" aria-label={words.label}>
      <ByChoice view={view} onChoose={(by) => choose({ by })} />
      <Choice
        label={words.product}
        value={view.product}
        options={finding.products.map(({ product }) => [product, product])}
        onChoose={(product) => choose({ product })}
      />
      <Choice
        label={words.requirement}
        value={view.requirement}
        options={requirementsOf(finding).map((quantity) => [quantity, quantityNames[quantity]])}
        onChoose={(requirement) => choose({ requirement })}
      />
      <Choice
        label={words.verdict}
        value={view.verdict}
        options={verdicts.map((verdict) => [verdict, text.verdict[verdict]])}
        onChoose={(verdict) => choose({ verdict })}
      />
      <FormField label={words.words}>
        {({ id }) => (
          <input
            id={id}
            type="search"
            value={view.words}
            placeholder={words.wordsHint}
            autoComplete="off"
            spellCheck={false}
            onChange={({ target }) => onView({ ...view, words: target.value })}
          />
        )}
      </FormField>
      <div className="findings-shown">
        <p role="status">
          {words.shown(shown.values, shown.allValues)}
          {words.productsHidden(finding.products.length - shown.products.length)}{' '}
          {shown.values === 0 && isFiltered(view) ? words.nothing : null}
        </p>
        {isFiltered(view) ? (
          <button
            type="button"
            className="press press-small"
            onClick={() => choose({ product: '', requirement: '', verdict: '', words: '' })}
          >
            {words.clear}
          </button>
        ) : null}
      </div>
    </search>
  );
}

interface ByChoiceProps {
  readonly view: View;
  readonly onChoose: (by: View['by']) => void;
}

function ByChoice({ view, onChoose }: ByChoiceProps) {
  const words = text.findings.filter;
  const ways = [
    ['product', words.byProduct],
    ['requirement', words.byRequirement],
  ] as const;
  return (
    <fieldset className="findings-by">
      <legend>{words.by}</legend>
      {ways.map(([by, label]) => (
        <label key={by}>
          <input type="radio" name="findings-by" checked={view.by === by} onChange={() => onChoose(by)} />
          {label}
        </label>
      ))}
    </fieldset>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: Quantity | string, words: string])[];
  readonly onChoose: (value: string) => void;
}

/** One of a few, or any. A value that the address asks for and this campaign does not hold stays to be seen. */
function Choice({ label, value, options, onChoose }: ChoiceProps) {
  const isHeld = value === '' || options.some(([one]) => one === value);
  return (
    <FormField label={label}>
      {({ id }) => (
        <select id={id} value={value} onChange={({ target }) => onChoose(target.value)}>
          <option value="">{text.findings.filter.any}</option>
          {isHeld ? null : <option value={value}>{value}</option>}
          {options.map(([one, words]) => (
            <option key={one} value={one}>
              {words}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
