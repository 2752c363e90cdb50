import { FormField } from './form-field.tsx';
import type { OwnControl } from './row-form.tsx';

/** A time by the clock of this bench, kept as an instant (ISO 8601, UTC). */
export function TimeField({ value, onChange, typed: _typed, onOther: _other, ...shell }: OwnControl) {
  return (
    <FormField {...shell}>
      {({ id, describedBy, isWrong }) => (
        <input
          id={id}
          type="datetime-local"
          value={localText(value)}
          aria-describedby={describedBy}
          aria-invalid={isWrong || undefined}
          onChange={(event) => onChange(instantText(event.currentTarget.value))}
        />
      )}
    </FormField>
  );
}

/** The instant now, to the minute. */
export function nowText(): string {
  return `${new Date().toISOString().slice(0, 16)}Z`;
}

function localText(instant: string): string {
  const at = new Date(instant);
  if (instant === '' || Number.isNaN(at.getTime())) return '';
  const shifted = new Date(at.getTime() - at.getTimezoneOffset() * 60_000);
  return shifted.toISOString().slice(0, 16);
}

function instantText(local: string): string {
  const at = new Date(local);
  return local === '' || Number.isNaN(at.getTime()) ? '' : `${at.toISOString().slice(0, 16)}Z`;
}
