import { dayAfter } from '@provinghouse/core';
import { type FocusEvent, useState } from 'react';
import { minuteOf, readDay, readTime, timeText, type WhenReading } from '../lib/entry/bench-clock.ts';
import { today } from '../lib/entry/today.ts';
import { text } from '../lib/text.ts';
import { type FieldShell, FormField } from './form-field.tsx';

interface WhenFieldProps extends FieldShell {
  /** As it is typed, finished or not. */
  readonly value: string;
  readonly onChange: (typed: string) => void;
}

/** What sets a day apart from a day with its time. */
interface Way {
  readonly read: (typed: string) => WhenReading;
  readonly hint: string;
  /** Words of the key that writes what it is now, and what that is; null where there is no such key. */
  readonly now: { readonly words: string; readonly typed: () => string } | null;
  /** What an arrow key makes of it; null where it makes nothing. */
  readonly moved: (shown: string, days: number) => string | null;
}

const words = text.entry.when;
const day: Way = { read: readDay, hint: words.dayHint, now: null, moved: dayAfter };
const thisDay: Way = { ...day, now: { words: words.today, typed: () => today() } };
const time: Way = {
  read: readTime,
  hint: words.timeHint,
  now: { words: words.now, typed: () => timeText(minuteOf(new Date())) },
  moved: () => null,
};

/** A day, written and shown as 2026-11-25 whatever the language of the browser; arrow keys change it by one. */
export function DayField({ isOftenToday = false, ...field }: WhenFieldProps & { readonly isOftenToday?: boolean }) {
  return <WhenField {...field} way={isOftenToday ? thisDay : day} />;
}

/** A day and a time by the clock of this bench, written and shown as 2026-11-25 14:30. */
export function TimeField(props: WhenFieldProps) {
  return <WhenField {...props} way={time} />;
}

function WhenField({ value, onChange, way, ...shell }: WhenFieldProps & { readonly way: Way }) {
  const [isLeft, setLeft] = useState(false);
  const reading = way.read(value);
  const own = isLeft && value.trim() !== '' && !reading.ok ? text.entry.fault.typed(reading.fault) : null;
  const fault = shell.fault ?? own;
  // The cure says the form: the hint gives way to it, and nothing below moves.
  const hint = fault === null ? <Hint form={way.hint} more={shell.hint} /> : shell.hint;
  const leave = ({ relatedTarget }: FocusEvent) => {
    // A fault that came up under a finger would push away the key that is being pressed; the key itself says what is wrong.
    if (!(relatedTarget instanceof HTMLButtonElement)) setLeft(true);
    if (reading.ok && reading.shown !== value) onChange(reading.shown);
  };
  const press = (key: string) => {
    const days = key === 'ArrowUp' ? 1 : key === 'ArrowDown' ? -1 : 0;
    const moved = days !== 0 && reading.ok ? way.moved(reading.shown, days) : null;
    if (moved !== null) onChange(moved);
    return moved !== null;
  };
  return (
    <FormField {...shell} hint={hint} fault={fault}>
      {({ id, describedBy, isWrong }) => (
        <span className="form-control">
          <input
            id={id}
            type="text"
            autoComplete="off"
            spellCheck={false}
            value={value}
            onBlur={leave}
            aria-describedby={describedBy}
            aria-invalid={isWrong || undefined}
            onChange={(event) => {
              if (event.currentTarget.value === '') setLeft(false);
              onChange(event.currentTarget.value);
            }}
            onKeyDown={(event) => {
              if (press(event.key)) event.preventDefault();
            }}
          />
          {way.now === null ? null : <NowKey label={shell.label} now={way.now} onPress={onChange} onLeave={leave} />}
        </span>
      )}
    </FormField>
  );
}

function Hint({ form, more }: { readonly form: string; readonly more: FieldShell['hint'] }) {
  return (
    <>
      {form}
      {more ? <span className="line">{more}</span> : null}
    </>
  );
}

interface NowKeyProps {
  readonly label: string;
  readonly now: NonNullable<Way['now']>;
  readonly onPress: (typed: string) => void;
  readonly onLeave: (event: FocusEvent) => void;
}

function NowKey({ label, now, onPress, onLeave }: NowKeyProps) {
  return (
    <button type="button" className="press" onClick={() => onPress(now.typed())} onBlur={onLeave}>
      {now.words}
      <span className="for-ears"> {words.into(label)}</span>
    </button>
  );
}
