import { useCallback, useEffect, useRef, useState } from 'react';
import { navigate, useSearch } from 'wouter/use-browser-location';

/** How a state stands in the query of an address. */
export interface AddressCodec<T> {
  readonly read: (search: string) => T;
  /** Without the question mark. */
  readonly write: (state: T) => string;
}

/** `push` makes a step that the back button undoes; `replace` follows typing. */
export type AddressStep = 'push' | 'replace';

/** Browsers refuse more than some hundred changes of the address in half a minute, so typing is written when it pauses. */
const pause_ms = 150;

/**
 * A state that the address of the page holds: opening the address gives it again, and so does the back button. The codec must be a
 * constant of its module.
 */
export function useAddressState<T>(codec: AddressCodec<T>): readonly [T, (next: T, step?: AddressStep) => void] {
  const search = useSearch().replace(/^\?/, '');
  const [state, setState] = useState(() => codec.read(search));
  const written = useRef(search);
  const pending = useRef<ReturnType<typeof setTimeout> | null>(null);
  useEffect(() => {
    if (search === written.current) return;
    written.current = search;
    setState(codec.read(search));
  }, [search, codec]);
  useEffect(
    () => () => {
      if (pending.current !== null) clearTimeout(pending.current);
    },
    [],
  );
  const set = useCallback(
    (next: T, step: AddressStep = 'replace') => {
      setState(next);
      if (pending.current !== null) clearTimeout(pending.current);
      const query = codec.write(next);
      const write = () => {
        pending.current = null;
        if (query === written.current) return;
        written.current = query;
        navigate(`${window.location.pathname}${query === '' ? '' : `?${query}`}`, { replace: step === 'replace' });
      };
      if (step === 'push') write();
      else pending.current = setTimeout(write, pause_ms);
    },
    [codec],
  );
  return [state, set];
}

/** One name and value of a query; what the trade writes (`~`, `!`) stays legible. */
export function queryPart(name: string, value: string): string {
  return `${encodeURIComponent(name)}=${encodeURIComponent(value).replaceAll('%2F', '/').replaceAll('%2C', ',')}`;
}
