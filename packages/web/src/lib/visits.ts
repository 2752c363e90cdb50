import { useSyncExternalStore } from 'react';

/** Steps of the guided start that were taken in this browser. */
const key = 'provinghouse-start';
const listeners = new Set<() => void>();
const none = '';

export type StartStep = 'who' | 'board' | 'piece' | 'findings' | 'ledger' | 'reckoner' | 'own';

const ofAddress: readonly (readonly [RegExp, StartStep])[] = [
  [/^\/c\/[^/]+$/, 'board'],
  [/^\/c\/[^/]+\/p\/[^/]+$/, 'piece'],
  [/^\/c\/[^/]+\/findings$/, 'findings'],
  [/^\/c\/[^/]+\/ledger$/, 'ledger'],
  [/^\/reckoner/, 'reckoner'],
  [/^\/new$/, 'own'],
];

/** Notes that an address was visited, where that is a step of the guided start. */
export function noteVisit(address: string): void {
  const step = ofAddress.find(([pattern]) => pattern.test(address))?.[1];
  if (step === undefined) return;
  const done = new Set((localStorage.getItem(key) ?? none).split(' '));
  if (done.has(step)) return;
  localStorage.setItem(key, [...done, step].join(' ').trim());
  for (const listener of listeners) listener();
}

/** The steps taken, parted by blanks. */
export function useSteps(): readonly string[] {
  const taken = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => localStorage.getItem(key) ?? none,
  );
  return taken.split(' ');
}
