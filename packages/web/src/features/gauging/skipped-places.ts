import { useSyncExternalStore } from 'react';

/** Places passed over on this visit, as `piece key`, by book: they are not asked again until somebody moves to them. */
let skipped: ReadonlyMap<string, ReadonlySet<string>> = new Map();
const listeners = new Set<() => void>();
const none: ReadonlySet<string> = new Set();

export function useSkipped(book: string): ReadonlySet<string> {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => skipped.get(book) ?? none,
  );
}

export function skipPlace(book: string, piece: string, key: string): void {
  skipped = new Map(skipped).set(book, new Set([...(skipped.get(book) ?? none), `${piece} ${key}`]));
  for (const listener of listeners) listener();
}
