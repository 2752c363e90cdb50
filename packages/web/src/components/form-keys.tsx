import type { ReactNode } from 'react';
import { text } from '../lib/text.ts';

interface FormKeysProps {
  readonly keep: string;
  readonly isBusy: boolean;
  /** Words between the two keys. */
  readonly aside?: ReactNode;
  /** Without it there is nothing to leave. */
  readonly onCancel?: (() => void) | undefined;
}

/** The keys below a form: keep it, and leave it. */
export function FormKeys({ keep, isBusy, aside, onCancel }: FormKeysProps) {
  return (
    <p className="form-keys">
      <button type="submit" className="press press-main" aria-disabled={isBusy || undefined}>
        {keep}
      </button>
      {aside}
      {onCancel ? (
        <button type="button" className="press" onClick={onCancel}>
          {text.entry.form.cancel}
        </button>
      ) : null}
    </p>
  );
}
