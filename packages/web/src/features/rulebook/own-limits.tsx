import {
  type DraftFault,
  isChangedLimit,
  type LimitSide,
  type OwnDraft,
  type OwnLimit,
  ownCopy,
  ownSides,
  quantityNames,
  quantityUnits,
  type Specification,
} from '@provinghouse/core';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { unitSign } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { asPublished, type OwnForm, shownNumber, withNumber } from './own-address.ts';

interface OwnLimitsProps {
  readonly form: OwnForm;
  readonly base: Specification;
  readonly draft: OwnDraft;
  readonly unread: ReadonlySet<string>;
  readonly faults: readonly DraftFault[];
  readonly onForm: (form: OwnForm) => void;
}

const words = text.rulebook;

/** Every quantity with its limit as published and the fields of the own one; a changed one asks for its source. */
export function OwnLimits(props: OwnLimitsProps) {
  const start = ownCopy(props.base).limits;
  return (
    <section className="pad-scroll" aria-label={words.ownCaption}>
      <table className="leaf own-limits">
        <caption className="for-ears">{words.ownCaption}</caption>
        <thead>
          <tr>
            {Object.entries(words.ownHead).map(([key, name]) => (
              <th key={key} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.draft.limits.map((limit) => (
            <OwnRow
              key={limit.quantity}
              {...props}
              limit={limit}
              isChanged={
                isChangedLimit(limit, start) || [...props.unread].some((name) => name.startsWith(`${limit.quantity}.`))
              }
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface OwnRowProps extends OwnLimitsProps {
  readonly limit: OwnLimit;
  readonly isChanged: boolean;
}

function OwnRow(props: OwnRowProps) {
  const { form, base, limit, isChanged, unread, faults, onForm } = props;
  const { quantity } = limit;
  const name = quantityNames[quantity];
  const published = base.limits.find((one) => one.quantity === quantity) ?? null;
  const sides: readonly LimitSide[] = ownSides[quantity];
  const isUnread = sides.some((side) => unread.has(`${quantity}.${side}`));
  const told = isUnread ? [words.notANumber] : faults.filter(({ at }) => at === quantity).map((fault) => fault.words);
  return (
    <tr className={isChanged ? 'own-changed' : undefined}>
      <th scope="row" className="own-name">
        {name}
        {isChanged ? <span className="badge own-badge">{changeWord(limit, published !== null)}</span> : null}
      </th>
      <td>
        {published === null ? <span className="soft">{text.limit.none}</span> : <LimitOrigin limit={published} />}
      </td>
      <td>
        <span className="own-numbers">
          {sides.map((side) => (
            <NumberField
              key={side}
              label={words.sideLabel(name, words.side[side])}
              side={words.side[side]}
              unit={unitSign(quantityUnits[quantity])}
              value={shownNumber(form, { quantity, side }, base)}
              name={`${quantity}.${side}`}
              isUnsound={unread.has(`${quantity}.${side}`)}
              onText={(typed) => onForm(withNumber(form, { quantity, side }, { text: typed, base }))}
            />
          ))}
        </span>
        {told.map((one) => (
          <p key={one} className="form-fault">
            {one}
          </p>
        ))}
        {isChanged ? (
          <span className="own-source">
            <input
              className="own-input"
              aria-label={words.sourceLabel(name)}
              name={`${quantity}.source`}
              placeholder={words.sourceHint}
              autoComplete="off"
              value={form.sources[quantity] ?? ''}
              onChange={({ target }) => onForm({ ...form, sources: { ...form.sources, [quantity]: target.value } })}
            />
            <button
              type="button"
              className="press"
              aria-label={words.asPublishedLabel(name)}
              onClick={() => onForm(asPublished(form, quantity))}
            >
              {words.asPublished}
            </button>
          </span>
        ) : null}
      </td>
    </tr>
  );
}

function changeWord(limit: OwnLimit, isPublished: boolean): string {
  if (!isPublished) return words.added;
  const isOut = limit.lower === null && limit.nominal === null && limit.upper === null;
  return isOut ? words.leftOut : words.changed;
}

interface NumberFieldProps {
  readonly label: string;
  readonly side: string;
  readonly unit: string;
  readonly value: string;
  readonly name: string;
  readonly isUnsound: boolean;
  readonly onText: (text: string) => void;
}

function NumberField({ label, side, unit, value, name, isUnsound, onText }: NumberFieldProps) {
  return (
    <label className="own-number">
      <span className="own-side">{side}</span>
      <input
        className="own-input"
        aria-label={label}
        name={name}
        inputMode="decimal"
        autoComplete="off"
        value={value}
        aria-invalid={isUnsound}
        onChange={({ target }) => onText(target.value)}
      />
      <span className="unit">{unit}</span>
    </label>
  );
}
