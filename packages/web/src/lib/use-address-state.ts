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
  const pending = useRef<Pending | null>(null);
  const flush = useCallback(() => {
    if (pending.current === null) return;
    clearTimeout(pending.current.timer);
    const { query } = pending.current;
    pending.current = null;
    if (query === written.current) return;
    written.current = query;
    goTo(query, 'replace');
  }, []);
  useEffect(() => {
    if (search === written.current) return;
    written.current = search;
    setState(codec.read(search));
  }, [search, codec]);
  useEffect(() => {
    // Before a press leads away from the page, what was typed last must be in the address it comes back to.
    window.addEventListener('click', flush, true);
    window.addEventListener('pagehide', flush);
    return () => {
      window.removeEventListener('click', flush, true);
      window.removeEventListener('pagehide', flush);
      if (pending.current !== null) clearTimeout(pending.current.timer);
    };
  }, [flush]);
  const set = useCallback(
    (next: T, step: AddressStep = 'replace') => {
      setState(next);
      const query = codec.write(next);
      if (step === 'replace') {
        if (pending.current !== null) clearTimeout(pending.current.timer);
        pending.current = { query, timer: setTimeout(flush, pause_ms) };
        return;
      }
      flush();
      if (query === written.current) return;
      written.current = query;
      goTo(query, 'push');
    },
    [codec, flush],
  );
  return [state, set];
}

interface Pending {
  readonly query: string;
  readonly timer: ReturnType<typeof setTimeout>;
}

function goTo(query: string, step: AddressStep): void {
  navigate(`${window.location.pathname}${query === '' ? '' : `?${query}`}`, { replace: step === 'replace' });
}

/** One name and value of a query; what the trade writes (`~`, `!`) stays legible. */
export function queryPart(name: string, value: string): string {
  return `${encodeURIComponent(name)}=${encodeURIComponent(value).replaceAll('%2F', '/').replaceAll('%2C', ',')}`;
}
