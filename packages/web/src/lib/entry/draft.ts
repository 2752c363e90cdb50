import { useCallback, useState } from 'react';

/** What stands in the fields of a form, by column. */
export type Typed = Readonly<Record<string, string>>;

const place = (name: string) => `provinghouse-draft ${name}`;

/**
 * What is typed into a form. Under a name it outlives a reload, the back button and a look at another place, in this window, until it is
 * dropped; without one it goes with the form.
 */
export function useDraft(name: string | null, start: Typed): readonly [Typed, (change: (now: Typed) => Typed) => void] {
  const [typed, setTyped] = useState<Typed>(() => ({ ...start, ...(name === null ? {} : heldDraft(name, start)) }));
  const change = useCallback(
    (edit: (now: Typed) => Typed) =>
      setTyped((now) => {
        const next = edit(now);
        if (name !== null) sessionStorage.setItem(place(name), JSON.stringify(next));
        return next;
      }),
    [name],
  );
  return [typed, change];
}

/** Forgets what was typed: it is kept in the record now, or was let go. */
export function dropDraft(name: string): void {
  sessionStorage.removeItem(place(name));
}

/** Only the columns that the form asks for. */
function heldDraft(name: string, start: Typed): Typed {
  try {
    const held: unknown = JSON.parse(sessionStorage.getItem(place(name)) ?? '{}');
    if (typeof held !== 'object' || held === null) return {};
    return Object.fromEntries(
      Object.entries(held).filter(
        (pair): pair is [string, string] => Object.hasOwn(start, pair[0]) && typeof pair[1] === 'string',
      ),
    );
  } catch {
    return {};
  }
}
